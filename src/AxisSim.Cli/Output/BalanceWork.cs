using AxisSim.Cli.Text.Balance;
using AxisSim.Core.Payloads;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Studies the balance of a scenario with bodies.</summary>
internal static class BalanceWork
{
    /// <summary>The answer.</summary>
    public static BalanceAnswer Of(Scenario scenario, PayloadModel payload, CancellationToken stop)
    {
        BalanceReport report = BalanceStudy.Run(payload, scenario.LatitudeRadians);
        ReachedImbalance[] reached = [.. new[] { MountAxis.Polar, MountAxis.Declination }.Select(axis => BalanceReach.Of(scenario.Setup, scenario.LatitudeRadians, axis))];
        GradedImbalance[] graded = [.. AxisNames.Of(scenario.Setup).Select(axis => GradedImbalance.Of(scenario.Setup, axis, reached.First(one => one.Axis == axis).Worst))];
        return new BalanceAnswer(scenario, report, reached, graded, BalanceTrial.Of(scenario, payload, report, new QuestionOptions { Stop = stop }));
    }
}
