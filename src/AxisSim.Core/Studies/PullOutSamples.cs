using System.Collections.Concurrent;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Simulated pull-out torques of one axis in one mode at the speeds asked for so far.</summary>
internal sealed class PullOutSamples(MountSetup setup, MountAxis axis, bool fullStepping)
{
    /// <summary>Neighbours that differ by more of the closed form get a speed between them.</summary>
    private const double CoarseShare = 0.04;

    /// <summary>Neighbours closer than this share of their speed do not.</summary>
    private const double ClosestShare = 0.02;

    /// <summary>Share of its speed to which a jump may be shifted.</summary>
    private const double JumpReach = 0.06;

    private readonly ConcurrentDictionary<double, PullOutTorque> _known = new();

    public bool FullStepping => fullStepping;

    /// <summary>The range at a speed; NaN where it was not simulated.</summary>
    private PullOutTorque At(double speed) => _known.TryGetValue(speed, out PullOutTorque torque) ? torque : new PullOutTorque(double.NaN, double.NaN);

    /// <summary>The ranges at some speeds, NaN where one was not simulated; near a jump, which a rotor's past may shift to either side, it reaches over both sides of the jump.</summary>
    public PullOutTorque[] At(IReadOnlyList<double> speeds)
    {
        PullOutTorque[] plain = [.. speeds.Select(At)];
        var wide = (PullOutTorque[])plain.Clone();
        int[] own = [.. Enumerable.Range(0, plain.Length).Where(i => !double.IsNaN(plain[i].LeastNewtonMetres))];
        double scale = own.Select(i => plain[i].GreatestNewtonMetres).DefaultIfEmpty(0.0).Max();
        foreach ((int below, int above) in own.Zip(own.Skip(1)))
        {
            if (!Jumps(plain[below], plain[above], scale))
            {
                continue;
            }

            double least = Math.Min(plain[below].LeastNewtonMetres, plain[above].LeastNewtonMetres);
            double greatest = Math.Max(plain[below].GreatestNewtonMetres, plain[above].GreatestNewtonMetres);
            foreach (int i in own.Where(i => speeds[i] >= (1.0 - JumpReach) * speeds[below] && speeds[i] <= (1.0 + JumpReach) * speeds[above]))
            {
                wide[i] = new PullOutTorque(Math.Min(wide[i].LeastNewtonMetres, least), Math.Max(wide[i].GreatestNewtonMetres, greatest));
            }
        }

        return fullStepping ? NothingSureBelow(wide, own) : wide;
    }

    /// <summary>
    /// A full-stepping rotor is pushed at its own frequency by every whole fraction of it, and these lie closer the slower it runs: below the fastest speed at which it swings itself out of step
    /// none is sure, for the sampled speeds tell nothing of those between.
    /// </summary>
    private static PullOutTorque[] NothingSureBelow(PullOutTorque[] torques, int[] own)
    {
        int fastest = own.Where(i => torques[i].LeastNewtonMetres <= 0.0).DefaultIfEmpty(-1).Max();
        foreach (int i in own.Where(i => i <= fastest))
        {
            torques[i] = torques[i] with { LeastNewtonMetres = 0.0 };
        }

        return torques;
    }

    /// <summary>Simulates at some speeds.</summary>
    public void Take(IEnumerable<double> speeds, int threads) =>
        Parallel.ForEach(speeds.Where(speed => !_known.ContainsKey(speed)).ToArray(), new ParallelOptions { MaxDegreeOfParallelism = threads }, speed => _known[speed] = PullOutSearch.At(setup, axis, fullStepping, speed));

    /// <summary>Speeds half-way between neighbours that differ.</summary>
    public double[] Between(IReadOnlyList<double> speeds)
    {
        double[] own = [.. speeds.Where(_known.ContainsKey)];
        double scale = own.Select(speed => _known[speed].GreatestNewtonMetres).DefaultIfEmpty(0.0).Max();
        return
        [
            .. own.Zip(own.Skip(1))
                .Where(pair => pair.Second - pair.First > ClosestShare * pair.Second
                    && Jumps(_known[pair.First], _known[pair.Second], scale))
                .Select(pair => 0.5 * (pair.First + pair.Second)),
        ];
    }

    private static bool Jumps(PullOutTorque a, PullOutTorque b, double scale) =>
        Math.Abs(a.LeastNewtonMetres - b.LeastNewtonMetres) > CoarseShare * scale || Math.Abs(a.GreatestNewtonMetres - b.GreatestNewtonMetres) > CoarseShare * scale;
}
