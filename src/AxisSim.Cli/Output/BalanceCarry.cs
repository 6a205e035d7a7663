using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>The places of a balanced payload on their way to the next command.</summary>
internal static class BalanceCarry
{
    /// <summary>The places that were run and hold; null when nothing is to be moved, or it does not hold.</summary>
    public static Carry? Of(Scenario scenario, string file, BalanceTried tried) => tried.Together is null ? null : new Carry(
        scenario,
        CarryText.Balanced,
        $"Places of payload and counterweight for {Path.GetFileName(file)}, found by axissim balance: no imbalance is left but what rounding leaves.",
        [.. tried.Drafts.SelectMany(step => step.Settings.Select(setting => new NotedSetting(setting, step.Note)))]);
}
