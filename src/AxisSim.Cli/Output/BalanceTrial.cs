using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs the steps of a balance as typed: each alone, and all together.</summary>
internal static class BalanceTrial
{
    /// <summary>The steps with what holds: every axis that arrives now still does, one at least arrives, and what remains of the imbalance is that of the figures as typed.</summary>
    public static BalanceTried Of(Scenario scenario, PayloadModel payload, BalanceReport report, QuestionOptions options)
    {
        ShiftStep[] drafts = [.. ShiftText.Steps(payload, report)];
        string[] all = [.. drafts.SelectMany(step => step.Settings)];
        ShiftStep[] steps = [.. drafts.Select(step => step.Settings.Count > 0 && Holding(scenario, step.Settings, options, asFile: false) is null ? step with { Settings = [] } : step)];
        TypedLine? together = all.Length > 0 ? Holding(scenario, all, options, asFile: true) : null;
        MountSetup after = all.Length > 0 && Carry.Read(scenario, all) is { } read ? read.Setup : scenario.Setup with { Load = MountLoadBuilder.FromBodies(report.Balanced, scenario.LatitudeRadians) };
        return new BalanceTried(
            steps,
            drafts,
            together,
            BalanceReach.Of(after, scenario.LatitudeRadians, MountAxis.Polar).Worst.NewtonMetres,
            BalanceReach.Of(after, scenario.LatitudeRadians, MountAxis.Declination).Worst.NewtonMetres,
            steps.Zip(drafts).Any(pair => pair.First.Settings.Count < pair.Second.Settings.Count) && together is null);
    }

    // The axes that arrive and settle with the settings, where none fails that does not fail without.
    private static TypedLine? Holding(Scenario scenario, IReadOnlyList<string> settings, QuestionOptions options, bool asFile)
    {
        IReadOnlyList<MountAxis> axes = AxisNames.Of(scenario.Setup);
        bool[] holds = TypedTrial.Hold(scenario, [.. axes.Select(axis => new Promise(axis, settings, TypedTrial.AsItIs))], options, asFile);
        MountAxis[] arriving = [.. axes.Where((_, i) => holds[i])];
        return arriving.Length > 0 ? new TypedLine(arriving, settings) : null;
    }
}
