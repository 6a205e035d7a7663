using AxisSim.Core.Batches;
using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>The answer for an axis in a sentence or two.</summary>
internal static class RecommendVerdict
{
    /// <summary>The verdict.</summary>
    public static string Of(RecommendReport report, RecommendedAxis advice)
    {
        AxisRecommendation answer = advice.Answer;
        string start = Say.Sentence(answer.Axis.Words()) + ": ", margin = Units.Percent(report.Margin);
        if (answer.Chosen is not { } chosen)
        {
            return start + $"NOTHING HOLDS with a margin of {margin}. {Nearest(answer)}";
        }

        string scope = report.Coarse
            ? "at the worst corner found of the tolerances (a coarse answer: the other corners were not tried)"
            : "at every corner of the tolerances";
        return start + $"{Name(report.Aim)} settings are {Rate(chosen.Settings.SlewRateRadiansPerSecond)} with a ramp of {Units.Time(chosen.Settings.RampSeconds)} and {Say.With(chosen.Settings.SlewCurrentAmperes, "A")} peak, {Stepping(chosen.Settings)}. They hold with a margin of {margin} {scope}.";
    }

    /// <summary>A rate to the digits of the search.</summary>
    public static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);

    /// <summary>How the drive steps.</summary>
    public static string Stepping(AxisSettings settings) => double.IsPositiveInfinity(settings.ChangeoverRadiansPerSecond)
        ? "microstepping throughout"
        : $"full-stepping above {SettingTexts.Changeover(settings.ChangeoverRadiansPerSecond)} of the motor";

    /// <summary>How the run of the scenario ends.</summary>
    public static string Ends(BatchResult run) => run.End switch
    {
        BatchEnd.Arrives => $"arrives and settles {Units.Time(run.SettleSeconds)} after the slew of {Units.Time(run.SlewSeconds)}",
        BatchEnd.DoesNotSettle => "arrives, but does not settle in the time observed",
        BatchEnd.Stalls => "stalls",
        BatchEnd.ClutchSlips => "slips in its clutch",
        _ => "cannot be simulated",
    };

    private static string Name(RecommendAim aim) => aim switch
    {
        RecommendAim.Fastest => "the fastest",
        RecommendAim.Quietest => "the quietest",
        RecommendAim.Coolest => "the coolest",
        _ => "balanced",
    };

    private static string Nearest(AxisRecommendation answer)
    {
        if (answer.Nearest is not { } nearest)
        {
            return "Not one of the settings that were tried arrives and settles, even at a tenth of the file's slew rate.";
        }

        string at = $"{Rate(nearest.Settings.SlewRateRadiansPerSecond)} with a ramp of {Units.Time(nearest.Settings.RampSeconds)} and {Say.With(nearest.Settings.SlewCurrentAmperes, "A")} peak";
        return nearest.LoadFactor >= 1.0
            ? $"The nearest is {at}: a margin of {Units.Percent(nearest.LoadFactor - 1.0)} at the worst corner."
            : $"The nearest is {at}: at the worst corner it carries {Units.Percent(nearest.LoadFactor)} of the load.";
    }
}
