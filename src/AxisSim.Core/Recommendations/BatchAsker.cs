using AxisSim.Core.Batches;

namespace AxisSim.Core.Recommendations;

/// <summary>Asks "does it arrive?" of many runs at once, counts them and tells how far the work is.</summary>
internal sealed class BatchAsker(int threads, double stepSeconds, Action<long>? counted, CancellationToken stop)
{
    private long runs;

    /// <summary>Runs so far.</summary>
    public long Runs => Interlocked.Read(ref runs);

    /// <summary>How each ends.</summary>
    public BatchResult[] Ask(IReadOnlyList<BatchCase> cases, BatchDepth depth = BatchDepth.Outcome) => BatchStudy.RunUnchecked(cases, new BatchOptions
    {
        Depth = depth,
        StepSeconds = stepSeconds,
        Threads = threads,
        Stop = stop,
        Finished = (_, _) => counted?.Invoke(Interlocked.Increment(ref runs)),
    });
}
