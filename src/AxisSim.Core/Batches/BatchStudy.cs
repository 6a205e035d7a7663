using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Batches;

/// <summary>Runs many moves that do not depend on each other.</summary>
public static class BatchStudy
{
    /// <summary>Results in the order of the cases.</summary>
    public static BatchResult[] Run(IReadOnlyList<BatchCase> cases, BatchOptions options)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(options);
        var results = new BatchResult[cases.Count];
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount, CancellationToken = options.Stop };
        Parallel.For(0, cases.Count, parallel, i =>
        {
            results[i] = options.Depth == BatchDepth.Outcome ? Outcome(cases[i], options.StepSeconds) : Settling(cases[i], options.StepSeconds);
            options.Finished?.Invoke(i, results[i]);
        });
        return results;
    }

    private static BatchResult Outcome(BatchCase item, double stepSeconds)
    {
        var plan = new MovePlan(item.Setup);
        var run = new MoveRun(item.Setup, item.Axis, plan, stepSeconds);
        if (!run.Choice.Workable)
        {
            return new BatchResult(BatchEnd.NotWorkable, double.NaN, plan.SlewSeconds, double.NaN, double.NaN);
        }

        var none = default(NoObserver);
        bool arrives = run.RunTo(plan.SlewSeconds + 0.3, ref none, stopWhenLost: true);
        BatchEnd end = arrives ? BatchEnd.Arrives : run.Failure is not null ? BatchEnd.Broken : run.SlipRadians != 0.0 ? BatchEnd.ClutchSlips : BatchEnd.Stalls;
        return new BatchResult(end, arrives ? double.NaN : run.TimeSeconds, plan.SlewSeconds, double.NaN, double.NaN);
    }

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
