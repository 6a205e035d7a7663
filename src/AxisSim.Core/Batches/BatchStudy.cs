using AxisSim.Core.Dynamics;
using AxisSim.Core.Lanes;
using AxisSim.Core.Motion;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Batches;

/// <summary>Runs many moves that do not depend on each other.</summary>
/// <remarks>
/// Outcomes are computed side by side in the machine's vector registers, moves with the same commands together. The results are the same bit for bit for
/// any width, number of threads, order and grouping of the cases, and those of a single <see cref="MoveRun"/>.
/// </remarks>
public static class BatchStudy
{
    /// <summary>Results in the order of the cases.</summary>
    public static BatchResult[] Run(IReadOnlyList<BatchCase> cases, BatchOptions options)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(options);
        var results = new BatchResult[cases.Count];
        void Done(int index, BatchResult result)
        {
            results[index] = result;
            options.Finished?.Invoke(index, result);
        }

        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount, CancellationToken = options.Stop };
        try
        {
            if (options.Depth == BatchDepth.Settling)
            {
                Parallel.For(0, cases.Count, parallel, i => Done(i, Settling(cases[i], options.StepSeconds)));
            }
            else
            {
                Outcomes(cases, options, parallel, Done);
            }
        }
        catch (AggregateException error) when (error.InnerExceptions.All(inner => inner is OperationCanceledException))
        {
            options.Stop.ThrowIfCancellationRequested();
            throw;
        }

        return results;
    }

    private static void Outcomes(IReadOnlyList<BatchCase> cases, BatchOptions options, ParallelOptions parallel, Action<int, BatchResult> done)
    {
        var ready = new LaneCase[cases.Count];
        Parallel.For(0, cases.Count, parallel, i => ready[i] = new LaneCase(i, cases[i], options.StepSeconds));
        foreach (LaneCase item in ready.Where(item => !item.Choice.Workable))
        {
            done(item.Index, Result(item, BatchEnd.NotWorkable, double.NaN));
        }

        List<TeamPlan> teams = TeamPlan.Of(ready, LaneWidths.Of(options.Width), parallel.MaxDegreeOfParallelism);
        using var engines = new ThreadLocal<ILaneEngine>(() => LaneWidths.Engine(options.Width, TeamPlan.MostLanes));
        Parallel.ForEach(System.Collections.Concurrent.Partitioner.Create(teams, loadBalance: true), parallel, team =>
            new LaneTeam(engines.Value!, team.Cases, team.Shared, (item, end, seconds) => done(item.Index, Result(item, end, seconds))).Run(options.Stop));
    }

    private static BatchResult Result(LaneCase item, BatchEnd end, double seconds) =>
        new(end, end == BatchEnd.Arrives ? double.NaN : seconds, item.SlewSeconds, double.NaN, double.NaN);

    private static BatchResult Settling(BatchCase item, double stepSeconds)
    {
        AxisResult result = MoveStudy.Run(item.Setup, item.Axis, new MoveOptions { StepSeconds = stepSeconds, Explain = false });
        AxisOutcome outcome = result.Outcome;
        BatchEnd end = !result.Step.Workable ? BatchEnd.NotWorkable : result.Broken is not null ? BatchEnd.Broken : outcome.Verdict switch
        {
            Verdict.Arrives => BatchEnd.Arrives,
            Verdict.Stalls => BatchEnd.Stalls,
            Verdict.ClutchSlips => BatchEnd.ClutchSlips,
            _ => BatchEnd.DoesNotSettle,
        };
        double failed = outcome.Loss?.TimeSeconds ?? outcome.ClutchSlipSeconds ?? double.NaN;
        return new BatchResult(end, failed, outcome.SlewSeconds, outcome.Settling?.AgainstRestSeconds ?? double.NaN, outcome.Power.ContinuousCelsius);
    }
}
