using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Comparisons;

/// <summary>Simulates some candidates: their safe rates, what limits them, and the move at those rates.</summary>
internal static class ComparisonRound
{
    /// <summary>A rate at which both axes together fail is lowered by this share, or by one resolution, whichever is more.</summary>
    private const double Lowering = 0.03;

    private const int MostLowerings = 12;

    /// <summary>Shares of the safe rates that are tried in turn until the move settles.</summary>
    private static readonly double[] Slower = [1.0, 0.85, 0.7, 0.5];

    /// <summary>Shares of the work that are done after the searches and after the causes.</summary>
    private const double Searched = 0.8;
    private const double Explained = 0.85;

    public static IReadOnlyList<CandidateResult> Run(IReadOnlyList<Entrant> entrants, ComparisonOptions options, Action<double> progress)
    {
        if (entrants.Count == 0)
        {
            return [];
        }

        IReadOnlyList<MountAxis> axes = entrants[0].Axes;
        var searches = new IReadOnlyList<GreatestRate>[axes.Count];
        var limits = new Limit[axes.Count][];
        for (int a = 0; a < axes.Count; a++)
        {
            int at = a;
            searches[a] = EnvelopeStudy.RunUnchecked(
                [.. entrants.Select(entrant => new EnvelopeCase(entrant.Loaded[at], entrant.Ramps[at], LeastRadiansPerSecond: entrant.Least[at]))],
                axes[a],
                new EnvelopeOptions
                {
                    ResolutionRadiansPerSecond = options.ResolutionRadiansPerSecond,
                    StepSeconds = options.StepSeconds,
                    Threads = options.Threads,
                    Stop = options.Stop,
                    Progress = share => progress(Searched * (at + share) / axes.Count),
                });
        }

        var ask = new Asker(new QuestionOptions { StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop });
        for (int a = 0; a < axes.Count; a++)
        {
            limits[a] = LimitCause.Of(ask, [.. entrants.Select((entrant, e) => new LimitCause.Question(entrant.Loaded[a], axes[a], entrant.Ramps[a], searches[a][e]))]);
        }

        progress(Explained);
        double[][] rates = [.. entrants.Select((_, e) => searches.Select(search => search[e].RateRadiansPerSecond).ToArray())];
        Lower(ask, entrants, rates, options);
        var results = new CandidateResult[entrants.Count];
        int done = 0;
        Parallel.For(0, entrants.Count, ComparisonStudy.Threads(options), e =>
        {
            results[e] = Result(ask, entrants[e], rates[e], [.. searches.Select(search => search[e])], [.. limits.Select(limit => limit[e])], options);
            progress(Explained + ((1.0 - Explained) * Interlocked.Increment(ref done) / entrants.Count));
        });
        return results;
    }

    /// <summary>The search moves one axis while the other keeps the mount's own rate: here both run at their safe rates, with the load factor and without.</summary>
    private static void Lower(Asker ask, IReadOnlyList<Entrant> entrants, double[][] rates, ComparisonOptions options)
    {
        var open = new HashSet<int>(Enumerable.Range(0, entrants.Count).Where(e => !rates[e].Any(double.IsNaN)));
        for (int round = 0; open.Count > 0; round++)
        {
            var asked = new List<(int Entrant, int Axis)>();
            var cases = new List<BatchCase>();
            foreach (int e in open)
            {
                MountSetup together = entrants[e].At(rates[e]);
                for (int a = 0; a < rates[e].Length; a++)
                {
                    MountAxis axis = entrants[e].Axes[a];
                    asked.AddRange([(e, a), (e, a)]);
                    cases.AddRange([new BatchCase(together.Loaded(axis, options.LoadFactor), axis), new BatchCase(together, axis)]);
                }
            }

            BatchResult[] ends = ask.Ask(cases);
            open.Clear();
            foreach ((int e, int a) in asked.Where((_, i) => ends[i].End != MoveEnd.Arrives).Distinct())
            {
                double lower = Math.Min(rates[e][a] * (1.0 - Lowering), rates[e][a] - options.ResolutionRadiansPerSecond);
                rates[e][a] = round < MostLowerings && lower >= entrants[e].Least[a] ? lower : double.NaN;
                open.Add(e);
            }

            open.RemoveWhere(e => rates[e].Any(double.IsNaN));
        }
    }

    private static CandidateResult Result(Asker ask, Entrant entrant, double[] rates, GreatestRate[] searches, Limit[] limits, ComparisonOptions options)
    {
        CandidateAxis Plain(int a, MountSetup at) => entrant.Axis(a, at, limits[a]) with { Search = searches[a], RateRadiansPerSecond = rates[a] };
        CandidateResult made = new()
        {
            Candidate = entrant.Candidate,
            Setup = entrant.Setup,
            Index = entrant.Index,
            Axes = [.. rates.Select((_, a) => Plain(a, entrant.Setup))],
            Fate = CandidateFate.NoSafeRate,
        };
        if (rates.Any(double.IsNaN))
        {
            return made;
        }

        foreach (double share in Slower)
        {
            double[] tried = [.. rates.Select((rate, a) => share * rate)];
            if (share < 1.0 && tried.Where((rate, a) => rate < entrant.Least[a]).Any())
            {
                break;
            }

            MountSetup setup = entrant.At(tried);
            if (share < 1.0 && !Bears(ask, entrant, setup, options))
            {
                continue;
            }

            CandidateAxis[] axes = [.. rates.Select((_, a) => Run(Plain(a, setup) with { RateRadiansPerSecond = tried[a] }, setup, options))];
            CandidateFate fate = axes.Any(axis => axis.ContinuousCelsius > axis.LimitCelsius) ? CandidateFate.TooHot
                : axes.Any(axis => double.IsNaN(axis.SettleSeconds)) ? CandidateFate.NotSettled
                : CandidateFate.Ranked;
            if (share == 1.0 || fate == CandidateFate.Ranked)
            {
                made = made with { Setup = setup, Axes = axes, SlewSeconds = axes.Max(axis => axis.OwnSlewSeconds), Fate = fate, SlowedToSettle = share < 1.0 };
            }

            if (fate != CandidateFate.NotSettled)
            {
                break;
            }
        }

        return made;
    }

    /// <summary>Whether all axes arrive with the load factor: a lower rate may meet a resonance that the greatest one passes by.</summary>
    private static bool Bears(Asker ask, Entrant entrant, MountSetup setup, ComparisonOptions options) =>
        ask.Ask([.. entrant.Axes.Select(axis => new BatchCase(setup.Loaded(axis, options.LoadFactor), axis))]).All(result => result.End == MoveEnd.Arrives);

    private static CandidateAxis Run(CandidateAxis axis, MountSetup setup, ComparisonOptions options)
    {
        NominalRun run = NominalRun.Of(setup, axis.Axis, options.StepSeconds);
        return axis with { OwnSlewSeconds = run.OwnSlewSeconds, SettleSeconds = run.SettleSeconds, ContinuousCelsius = run.Endless.Celsius, Duty = run.Endless.Duty, MeanWatts = run.MeanWatts };
    }
}
