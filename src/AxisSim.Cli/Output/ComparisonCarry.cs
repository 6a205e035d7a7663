using AxisSim.Cli.Input;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>The best motor of a comparison with its settings, on its way to the next command.</summary>
internal static class ComparisonCarry
{
    /// <summary>The candidate that was run and holds; null when there is none.</summary>
    public static Carry? Of(Scenario scenario, ComparisonReport report, string motors)
    {
        if (report.Try is not { } best)
        {
            return null;
        }

        string motor = best.Result.Candidate.Motor.Name;
        string source = report.Fits.Any(fit => fit.Motor == motor) ? $"{motor}, fitted to its measured curve" : $"{motor}, from {Path.GetFileName(motors)}";
        string about = $"The motor {CandidateText.Name(best.Result)} in {Path.GetFileName(report.File)}, found by axissim compare with a margin of {Units.Percent(report.Margin)}.";
        var notes = CandidateSettings.Of(report.Mount, best.Result, PlainText.Visible(source)).ToDictionary(one => one.Setting, one => one.Note, StringComparer.Ordinal);
        return new Carry(scenario, CarryText.BestMotor, PlainText.Visible(about), [.. best.Line.Settings.Select(setting => new NotedSetting(setting, notes.GetValueOrDefault(setting, Carry.Kept)))]);
    }
}
