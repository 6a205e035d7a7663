using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>A question: how fast with everything else set so?</summary>
/// <param name="Setup">The mount, which may differ from the scenario's.</param>
/// <param name="Settings">All settings; the slew rate is what is looked for.</param>
internal sealed record RateQuestion(MountSetup Setup, AxisSettings Settings);

/// <summary>The greatest slew rate at which every one of some load cases arrives with the margin, for many settings at once.</summary>
internal sealed class RateFinder(Asker ask, double margin, double resolution)
{
    /// <summary>Time at full speed in the moves that are searched with, s; the answer is then verified with the whole moves.</summary>
    public const double CruiseSeconds = 1.0;

    /// <summary>Length of a move that has a given time at full speed, rad.</summary>
    public static double ProbeRadians(AxisSettings settings) => settings.SlewRateRadiansPerSecond * (settings.RampSeconds + CruiseSeconds);

    /// <summary>The answers in the order of the questions.</summary>
    public GreatestRate[] Run(IReadOnlyList<RateQuestion> questions, IReadOnlyList<LoadCase> loads)
    {
        RateSearch[] searches = [.. questions.Select(question => Search(question, loads))];

        // The same plan next to each other: all loads of one rate of one setting.
        EdgeFinder.Find(ask, [.. questions.Zip(searches).Select(one => new EdgeQuestion(one.Second.Line, place => loads.Select(load => Case(one.First, load, one.Second.Rate(place)))))]);
        return [.. searches.Select(search => search.Result())];
    }

    private RateSearch Search(RateQuestion question, IReadOnlyList<LoadCase> loads)
    {
        AxisSettings settings = question.Settings;
        MountAxis axis = loads[0].Move.Axis;
        return new RateSearch(
            resolution,
            settings.RampSeconds,
            settings.Apply(question.Setup, axis).Axis(axis).Motion.StartRateRadiansPerSecond,
            loads.Select(load => RateCap.Of(settings.Apply(load.Move.Apply(question.Setup), axis), axis, settings.RampSeconds)).MaxBy(one => one.RateRadiansPerSecond));
    }

    private BatchCase Case(RateQuestion question, LoadCase load, double rate)
    {
        AxisSettings settings = question.Settings with { SlewRateRadiansPerSecond = rate };
        return load.With(question.Setup, settings, margin, ProbeRadians(settings));
    }
}
