using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Stepping;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Batches;

/// <summary>Runs many moves that do not depend on each other.</summary>
/// <remarks>
/// Moves are computed side by side in the machine's vector registers, those with the same commands together. The results are the same bit for bit for
/// any width, number of threads, order and grouping of the cases, and those of a single run. A case ends where it fails: what is asked of it beyond that is NaN.
/// </remarks>
public static class BatchStudy
{
    /// <summary>Results in the order of the cases.</summary>
    /// <exception cref="ArgumentException">A setup will not do (<see cref="SetupChecks"/>); the message lists all problems of all cases.</exception>
    public static BatchResult[] Run(IReadOnlyList<BatchCase> cases, BatchOptions options)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.RequireAll(cases, one => SetupChecks.Problems(one.Setup, one.Axis), options.StepSeconds, nameof(cases));
        return RunUnchecked(cases, options);
    }

    /// <summary>The same for setups that a study has derived from one that was checked.</summary>
    internal static BatchResult[] RunUnchecked(IReadOnlyList<BatchCase> cases, BatchOptions options)
    {
        var results = new BatchResult[cases.Count];
        void Done(int index, BatchResult result)
        {
            results[index] = result;
            options.Finished?.Invoke(index, result);
        }

        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount, CancellationToken = options.Stop };
        try
        {
            var ready = new LaneCase[cases.Count];
            Parallel.For(0, cases.Count, parallel, i => ready[i] = new LaneCase(i, cases[i], options));
            foreach (LaneCase item in ready.Where(item => !item.Choice.Workable))
            {
                Done(item.Index, item.Result(BatchEnd.NotWorkable, double.NaN));
            }

            List<TeamPlan> teams = TeamPlan.Of(LaneCase.Different([.. ready.Where(item => item.Choice.Workable)]), LaneWidths.Of(options.Width), parallel.MaxDegreeOfParallelism);
            using var engines = new ThreadLocal<ILaneEngine>(() => LaneWidths.Engine(options.Width, teams.Max(team => team.Cases.Count)));
            Parallel.ForEach(System.Collections.Concurrent.Partitioner.Create(teams, loadBalance: true), parallel, team =>
                new LaneTeam(engines.Value!, team.Cases, team.Shared, (item, result) => Done(item.Index, result)).Run(options.Stop));
        }
        catch (AggregateException error) when (error.InnerExceptions.All(inner => inner is OperationCanceledException))
        {
            options.Stop.ThrowIfCancellationRequested();
            throw;
        }

        return results;
    }
}
