using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>The settings of a recommendation on their way to the next command.</summary>
internal static class RecommendCarry
{
    /// <summary>The settings that were run and hold; null when there are none.</summary>
    public static Carry? Of(Scenario scenario, RecommendReport report)
    {
        if (report.Recommended.Count == 0)
        {
            return null;
        }

        string about = $"Settings for {Path.GetFileName(report.File)}, found by axissim recommend: aim {RecommendVerdict.Aim(report.Aim)}, margin {Units.Percent(report.Margin)} at {(report.Coarse ? "the worst corner" : "every corner")} of the tolerances.";
        Dictionary<string, string> notes = report.Axes.Where(advice => advice.Run is not null).SelectMany(advice => SettingTexts.Of(advice.Answer.Axis, advice.Answer.Chosen!.Settings).Zip(Notes(report, advice), (setting, note) => (setting, note))).ToDictionary(pair => pair.setting, pair => pair.note, StringComparer.Ordinal);
        return new Carry(scenario, CarryText.Recommended, about, [.. report.Recommended.Select(setting => new NotedSetting(setting, notes.GetValueOrDefault(setting, Carry.Kept)))]);
    }

    // In the order of the settings.
    private static IEnumerable<string> Notes(RecommendReport report, RecommendedAxis advice)
    {
        AxisSettings now = advice.Now;
        HoldingCurrents currents = advice.Answer.Currents!;
        yield return $"holds with a margin of {Units.Percent(report.Margin)}; before: {RecommendVerdict.Rate(now.SlewRateRadiansPerSecond)}";
        yield return $"found with this rate; before: {Units.Time(now.RampSeconds)}";
        yield return $"found with this rate and ramp; before: {Units.Current(now.SlewCurrentAmperes)}";
        yield return $"{RecommendPresenter.Reason(currents.TrackingReason)}; before: {Units.Current(now.TrackingCurrentAmperes)}";
        yield return $"{RecommendPresenter.Reason(currents.HoldingReason)}; before: {Units.Current(now.HoldingCurrentAmperes)}";
        yield return $"before: {SettingTexts.Changeover(now.ChangeoverRadiansPerSecond)}";
    }
}
