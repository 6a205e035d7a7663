using AxisSim.Core.Batches;

namespace AxisSim.Core.Questions;

/// <summary>Asks "how does it end?" of many moves at once, and counts them.</summary>
/// <remarks>Every question of a study goes through one of these, so that a round of questions is one batch of lanes.</remarks>
internal sealed class Asker(QuestionOptions options)
{
    private long runs;

    /// <summary>Runs so far.</summary>
    public long Runs => Interlocked.Read(ref runs);

    /// <summary>How each ends, in the order of the cases.</summary>
    public BatchResult[] Ask(IReadOnlyList<BatchCase> cases, BatchDepth depth = BatchDepth.Outcome) => cases.Count == 0 ? [] : BatchStudy.RunUnchecked(cases, new BatchOptions
    {
        Depth = depth,
        StepSeconds = options.StepSeconds,
        Threads = options.Threads,
        Stop = options.Stop,
        Finished = (_, _) => Count(),
    });

    private void Count()
    {
        long done = Interlocked.Increment(ref runs);
        options.Counted?.Invoke(done);
    }
}
