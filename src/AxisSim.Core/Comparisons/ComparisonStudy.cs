using AxisSim.Core.Bounds;
using AxisSim.Core.Drives;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Comparisons;

/// <summary>Ranks motors, reductions and supplies by how soon they bring the payload to its target at a given margin.</summary>
/// <remarks>
/// <para>For each candidate and axis: the greatest slew rate, with the ramp time of the mount, that still arrives with inertia, imbalance and friction times the load factor
/// (<see cref="EnvelopeStudy"/>). Then the move as it is, both axes at those rates (or at 85, 70 or 50 % of them, where it would not settle): time on target is when the last of the axes
/// compared stays within the tolerance. An axis that is not compared keeps the mount's own motion.</para>
/// <para>Rank: time on target, then mean power, then the order given. A winding that would get hotter than its insulation class allows, a move that does not settle,
/// and no safe rate put a candidate behind all others. The pulse rate of the controller bounds the search.</para>
/// <para>The closed form spares runs: of each motor the setting that looks fastest by <see cref="RateBound"/> is simulated first, and its other settings only if they could beat it
/// by their bound. So the best setting of each motor is found by simulation.</para>
/// </remarks>
public static class ComparisonStudy
{
    /// <summary>Rates below this share of the mount's own slew rate are not looked at.</summary>
    public const double LeastShare = 0.1;

    /// <summary>Torque over that of the closed form with which candidates are spared.</summary>
    public const double Allowance = RateBound.Allowance;

    /// <summary>Share of the work that the first round is, for the progress.</summary>
    private const double FirstRound = 0.4;

    /// <summary>The results, the best first.</summary>
    /// <exception cref="ArgumentException">The setup (<see cref="SetupChecks"/>) or a candidate will not do; the message lists all problems.</exception>
    public static IReadOnlyList<CandidateResult> Run(MountSetup setup, IReadOnlyList<MountAxis> axes, IReadOnlyList<Candidate> candidates, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(axes);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.Require(setup, axes, options.StepSeconds);
        EntryCheck.RequireAll(candidates, Problems, null, nameof(candidates));
        Entrant[] all = new Entrant[candidates.Count];
        Parallel.For(0, all.Length, Threads(options), i => all[i] = new Entrant(setup, axes, candidates[i], i, options));
        var results = new List<CandidateResult>();
        Entrant[] able = [.. all.Where(entrant => entrant.Hopeful)];
        results.AddRange(all.Where(entrant => !entrant.Hopeful && !options.All).Select(entrant => entrant.Unsimulated(CandidateFate.Hopeless)));
        if (options.All)
        {
            results.AddRange(ComparisonRound.Run(all, options, share => options.Progress?.Invoke(share)));
            return Ranked(results);
        }

        Entrant[] first = [.. able.GroupBy(entrant => entrant.Candidate.Motor).Select(group => group.MinBy(entrant => entrant.LeastSeconds)!)];
        IReadOnlyList<CandidateResult> found = ComparisonRound.Run(first, options, share => options.Progress?.Invoke(FirstRound * share));
        results.AddRange(found);
        Dictionary<MotorChoice, double> reached = found.ToDictionary(result => result.Candidate.Motor, result => result.Fate == CandidateFate.Ranked ? result.OnTargetSeconds : double.PositiveInfinity);
        Entrant[] second = [.. able.Except(first).Where(entrant => entrant.LeastSeconds < reached[entrant.Candidate.Motor])];
        results.AddRange(able.Except(first).Except(second).Select(entrant => entrant.Unsimulated(CandidateFate.Slower)));
        results.AddRange(ComparisonRound.Run(second, options, share => options.Progress?.Invoke(FirstRound + ((1.0 - FirstRound) * share))));
        options.Progress?.Invoke(1.0);
        return Ranked(results);
    }

    private static IReadOnlyList<SetupProblem> Problems(Candidate candidate)
    {
        var found = new ProblemCollector();
        MotorChecks.Check(found, nameof(Candidate), candidate.Motor.Motor);
        found.At(nameof(Candidate));
        found.CheckGiven(candidate.SupplyVolts, DriveBounds.SupplyVoltage);
        if (candidate.TotalReduction is { } ratio && !(ratio > 0.0 && double.IsFinite(ratio)))
        {
            found.Add(nameof(candidate.TotalReduction), ProblemCollector.Text(ratio), "a finite number above zero");
        }

        return found.Problems;
    }

    /// <summary>The best result of each motor, the best first.</summary>
    public static IReadOnlyList<CandidateResult> BestOfEach(IReadOnlyList<CandidateResult> ranked)
    {
        ArgumentNullException.ThrowIfNull(ranked);
        return [.. ranked.GroupBy(result => result.Candidate.Motor).Select(group => group.First())];
    }

    internal static ParallelOptions Threads(ComparisonOptions options) =>
        new() { MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount, CancellationToken = options.Stop };

    private static CandidateResult[] Ranked(IEnumerable<CandidateResult> results) =>
    [
        .. results.OrderBy(result => result.Fate)
            .ThenBy(result => Known(result.Fate == CandidateFate.Ranked ? result.OnTargetSeconds : result.SlewSeconds))
            .ThenBy(result => Known(result.MeanWatts))
            .ThenBy(result => result.Index),
    ];

    private static double Known(double value) => double.IsNaN(value) ? double.PositiveInfinity : value;
}
