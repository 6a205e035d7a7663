using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>Asks "does it arrive?" for all reductions together, round by round, so that a batch is large.</summary>
internal sealed class ReductionBatch(MountAxis axis, ReductionOptions options)
{
    public int MovesRun { get; private set; }

    /// <summary>How each setup ends.</summary>
    public BatchEnd[] Ends(IReadOnlyList<MountSetup> setups, Action? finished = null)
    {
        MovesRun += setups.Count;
        BatchResult[] results = BatchStudy.RunUnchecked([.. setups.Select(setup => new BatchCase(setup, axis))], new BatchOptions
        {
            Depth = BatchDepth.Outcome,
            StepSeconds = options.StepSeconds,
            Threads = options.Threads,
            Stop = options.Stop,
            Finished = (_, _) => finished?.Invoke(),
        });
        return [.. results.Select(result => result.End)];
    }

    /// <summary>Carries a search of every reduction to its end.</summary>
    public void Search(
        IReadOnlyList<ReductionWork> works, Func<ReductionWork, EdgeScan> search, Func<ReductionWork, double, MountSetup> setup, double from, double share, Action<ReductionWork, double, BatchEnd> take)
    {
        int done = 0;
        double usual = works.Count * EdgeScan.Usual;
        while (true)
        {
            (ReductionWork Work, double Value)[] asked = [.. works.SelectMany(work => search(work).Next().Select(value => (work, value)))];
            if (asked.Length == 0)
            {
                options.Progress?.Invoke(from + share);
                return;
            }

            BatchEnd[] ends = Ends(
                [.. asked.Select(question => setup(question.Work, question.Value))],
                () => options.Progress?.Invoke(from + (share * Math.Min(0.99, Interlocked.Increment(ref done) / usual))));
            for (int i = 0; i < asked.Length; i++)
            {
                take(asked[i].Work, asked[i].Value, ends[i]);
            }
        }
    }
}
