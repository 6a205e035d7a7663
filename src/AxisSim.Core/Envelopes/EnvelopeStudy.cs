using AxisSim.Core.Batches;
using AxisSim.Core.Bounds;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Envelopes;

/// <summary>The greatest slew rate that arrives, ramp by ramp, for one or many mounts.</summary>
/// <remarks>
/// Greatest is the rate up to which every one that was tried arrives (keeps sync and clutch until shortly after the slew): an island of arrival above
/// a failure does not count. All questions are asked together, round by round, so that a batch is large. Above the search lie the rates of <see cref="RateCap"/>.
/// </remarks>
public static class EnvelopeStudy
{
    /// <summary>The answers, in the order of the cases.</summary>
    /// <exception cref="ArgumentException">A setup will not do (<see cref="SetupChecks"/>); the message lists all problems of all cases.</exception>
    public static IReadOnlyList<GreatestRate> Run(IReadOnlyList<EnvelopeCase> cases, MountAxis axis, EnvelopeOptions options)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.RequireAll(cases, one => Problems(one, axis), options.StepSeconds, nameof(cases));
        return RunUnchecked(cases, axis, options);
    }

    /// <summary>The same for setups that a study has derived from one that was checked.</summary>
    internal static IReadOnlyList<GreatestRate> RunUnchecked(IReadOnlyList<EnvelopeCase> cases, MountAxis axis, EnvelopeOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.ResolutionRadiansPerSecond, nameof(options));
        double usual = Math.Max(1, cases.Count * RateSearch.Usual);
        var ask = new Asker(new QuestionOptions
        {
            StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop, Counted = runs => options.Progress?.Invoke(Math.Min(0.99, runs / usual)),
        });
        RateSearch[] searches = [.. cases.Select(one => new RateSearch(
            options.ResolutionRadiansPerSecond,
            one.RampSeconds,
            Math.Max(one.LeastRadiansPerSecond, one.Setup.Axis(axis).Motion.StartRateRadiansPerSecond),
            RateCap.Of(one.Setup, axis, one.RampSeconds),
            one.AlsoTryRadiansPerSecond))];
        EdgeFinder.Find(ask, [.. cases.Zip(searches).Select(one => new EdgeQuestion(
            one.Second.Line, place => [new BatchCase(With(one.First.Setup, axis, one.First.RampSeconds, one.Second.Rate(place)), axis)]))]);
        options.Progress?.Invoke(1.0);
        return [.. searches.Select(search => search.Result())];
    }

    /// <summary>A setup with another slew rate and ramp time of an axis.</summary>
    public static MountSetup With(MountSetup setup, MountAxis axis, double rampSeconds, double rateRadiansPerSecond) =>
        setup.WithRampTime(axis, rampSeconds).WithSlewRate(axis, rateRadiansPerSecond);

    private static IReadOnlyList<SetupProblem> Problems(EnvelopeCase one, MountAxis axis)
    {
        IReadOnlyList<SetupProblem> found = SetupChecks.Problems(one.Setup, axis);
        return AxisBounds.RampTime.Holds(one.RampSeconds) ? found : [.. found, new SetupProblem(nameof(one.RampSeconds), ProblemCollector.Text(one.RampSeconds), AxisBounds.RampTime.Allowed)];
    }
}
