using AxisSim.Core.Batches;
using AxisSim.Core.Questions;

namespace AxisSim.Cli.Output;

/// <summary>A question that some runs answer; questions that do not wait for each other share one batch.</summary>
/// <typeparam name="T">What the answer is.</typeparam>
/// <param name="Cases">The runs, each with its depth.</param>
/// <param name="Answer">The answer, from their results in order.</param>
internal sealed record Asked<T>(IReadOnlyList<BatchCase> Cases, Func<IReadOnlyList<BatchResult>, T> Answer)
{
    /// <summary>The answer to it alone.</summary>
    public T Run(QuestionOptions options) => Answer(Asked.Results(Cases, options));
}

/// <summary>Questions that are asked together.</summary>
internal static class Asked
{
    /// <summary>The answers to two, from one batch.</summary>
    public static (TFirst First, TSecond Second) Run<TFirst, TSecond>(Asked<TFirst> first, Asked<TSecond> second, QuestionOptions options)
    {
        BatchResult[] results = Results([.. first.Cases, .. second.Cases], options);
        return (first.Answer(results[..first.Cases.Count]), second.Answer(results[first.Cases.Count..]));
    }

    /// <summary>Results of some runs.</summary>
    internal static BatchResult[] Results(IReadOnlyList<BatchCase> cases, QuestionOptions options) =>
        BatchStudy.Run(cases, new BatchOptions { StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop });
}
