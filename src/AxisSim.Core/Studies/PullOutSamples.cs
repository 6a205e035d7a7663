using System.Collections.Concurrent;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Simulated pull-out torques of one axis in one mode at the speeds asked for so far.</summary>
internal sealed class PullOutSamples(MountSetup setup, MountAxis axis, bool fullStepping)
{
    /// <summary>Neighbours that differ by more of the closed form get a speed between them.</summary>
    private const double CoarseShare = 0.04;

    /// <summary>Neighbours closer than this share of their speed do not.</summary>
    private const double ClosestShare = 0.02;

    private readonly ConcurrentDictionary<double, PullOutTorque> _known = new();

    public bool FullStepping => fullStepping;

    /// <summary>The range at a speed; NaN where it was not simulated.</summary>
    public PullOutTorque At(double speed) => _known.TryGetValue(speed, out PullOutTorque torque) ? torque : new PullOutTorque(double.NaN, double.NaN);

    /// <summary>Simulates at some speeds.</summary>
    public void Take(IEnumerable<double> speeds, int threads) =>
        Parallel.ForEach(speeds.Where(speed => !_known.ContainsKey(speed)).ToArray(), new ParallelOptions { MaxDegreeOfParallelism = threads }, speed => _known[speed] = PullOutSearch.At(setup, axis, fullStepping, speed));

    /// <summary>Speeds half-way between neighbours that differ.</summary>
    public double[] Between(IReadOnlyList<double> speeds)
    {
        double[] own = [.. speeds.Where(_known.ContainsKey)];
        double scale = own.Select(speed => _known[speed].GreatestNewtonMetres).DefaultIfEmpty(0.0).Max();
        bool Apart(double a, double b) => Math.Abs(a - b) > CoarseShare * scale;
        return
        [
            .. own.Zip(own.Skip(1))
                .Where(pair => pair.Second - pair.First > ClosestShare * pair.Second
                    && (Apart(_known[pair.First].LeastNewtonMetres, _known[pair.Second].LeastNewtonMetres) || Apart(_known[pair.First].GreatestNewtonMetres, _known[pair.Second].GreatestNewtonMetres)))
                .Select(pair => 0.5 * (pair.First + pair.Second)),
        ];
    }
}
