using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Comparisons;

/// <summary>Says what stands against a greater rate, by re-running the first failing one with one thing changed.</summary>
/// <remarks>
/// The clutch, if it slips; resonance, if the rate arrives without full-stepping; the supply, if it arrives with ten times the voltage; resonance too, if neither cures although the
/// closed form gives far more than is needed; else torque.
/// </remarks>
internal static class LimitCause
{
    /// <summary>Needing less than this share of the closed form, a motor that loses step swings (as in the search for the cause of a failed move).</summary>
    private const double FarMore = 0.6;

    /// <summary>One question: a loaded mount with the ramp in use, its axis and what the search found.</summary>
    public sealed record Question(MountSetup Loaded, MountAxis Axis, double RampSeconds, SafeRate Rate);

    /// <summary>Answers in the order of the questions.</summary>
    public static CandidateLimit[] Of(IReadOnlyList<Question> questions, ComparisonOptions options)
    {
        var cases = new List<BatchCase>();
        int[] first = new int[questions.Count];
        for (int i = 0; i < questions.Count; i++)
        {
            first[i] = cases.Count;
            if (questions[i].Rate is { Limit: EnvelopeLimit.Fails, Failure: BatchEnd.Stalls })
            {
                MountSetup failing = Failing(questions[i]);
                MountAxis axis = questions[i].Axis;
                cases.Add(new BatchCase(Ample(failing, axis), axis));
                if (double.IsFinite(failing.Axis(axis).Drive.ChangeoverRadiansPerSecond))
                {
                    cases.Add(new BatchCase(Microstepped(failing, axis), axis));
                }
            }
        }

        BatchResult[] results = BatchStudy.RunUnchecked(cases, new BatchOptions { StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop });
        return [.. questions.Select((question, i) => Of(question, results.AsSpan(first[i], (i + 1 < first.Length ? first[i + 1] : cases.Count) - first[i])))];
    }

    /// <summary>What the end of a search that never failed is called.</summary>
    public static CandidateLimit Of(EnvelopeLimit limit) => limit switch
    {
        EnvelopeLimit.PulseRate => CandidateLimit.PulseRate,
        EnvelopeLimit.MoveLength => CandidateLimit.MoveLength,
        EnvelopeLimit.MotorSpeed => CandidateLimit.MotorSpeed,
        _ => CandidateLimit.Torque,
    };

    /// <summary>A setup with ten times the voltage and a stiff supply.</summary>
    public static MountSetup Ample(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        return setup.With(axis, model with { Drive = model.Drive with { SupplyVolts = 10.0 * model.Drive.SupplyVolts, SupplyResistanceOhms = 0.0, BrakeLimitVolts = double.PositiveInfinity } });
    }

    private static CandidateLimit Of(Question question, ReadOnlySpan<BatchResult> reruns)
    {
        SafeRate rate = question.Rate;
        if (rate.Limit != EnvelopeLimit.Fails)
        {
            return Of(rate.Limit);
        }

        if (rate.Failure != BatchEnd.Stalls)
        {
            return rate.Failure == BatchEnd.ClutchSlips ? CandidateLimit.Clutch : CandidateLimit.NotSimulated;
        }

        if (reruns.Length > 1 && reruns[1].End == BatchEnd.Arrives)
        {
            return CandidateLimit.Resonance;
        }

        return reruns[0].End == BatchEnd.Arrives ? CandidateLimit.SupplyVoltage
            : RateBound.NeededShare(Failing(question), question.Axis) < FarMore ? CandidateLimit.Resonance
            : CandidateLimit.Torque;
    }

    private static MountSetup Failing(Question question) => EnvelopeStudy.With(question.Loaded, question.Axis, question.RampSeconds, question.Rate.FirstFailingRadiansPerSecond);

    private static MountSetup Microstepped(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        return setup.With(axis, model with { Drive = model.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity } });
    }
}
