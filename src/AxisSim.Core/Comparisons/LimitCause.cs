using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Comparisons;

/// <summary>Says what stands against a greater rate: the search's own end, or what makes the first rate that fails do so (<see cref="LimitStudy"/>).</summary>
internal static class LimitCause
{
    /// <summary>One question: a loaded mount with the ramp in use, its axis and what the search found.</summary>
    public sealed record Question(MountSetup Loaded, MountAxis Axis, double RampSeconds, GreatestRate Rate);

    /// <summary>Answers in the order of the questions.</summary>
    public static Limit[] Of(Asker ask, IReadOnlyList<Question> questions)
    {
        int[] failing = [.. Enumerable.Range(0, questions.Count).Where(i => questions[i].Rate.Cap is null)];
        BatchCase[] cases = [.. failing.Select(i => Failing(questions[i]))];
        BatchResult[] results = ask.Ask(cases);
        LimitFinding[] findings = LimitStudy.Find(ask, [.. cases.Zip(results)]);
        var limits = new Limit[questions.Count];
        for (int i = 0; i < questions.Count; i++)
        {
            limits[i] = questions[i].Rate.Cap ?? findings[Array.IndexOf(failing, i)].Limit;
        }

        return limits;
    }

    private static BatchCase Failing(Question question) =>
        new(EnvelopeStudy.With(question.Loaded, question.Axis, question.RampSeconds, question.Rate.FirstFailingRadiansPerSecond), question.Axis);
}
