using System.Text.RegularExpressions;
using AxisSim.Cli;
using AxisSim.Cli.Hosting;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>What the program suggests after the stall of the demo is what rescues it.</summary>
[Trait("speed", "slow")]
public sealed partial class CureTests
{
    private const double AskedLoadFactor = 1.1;

    [Fact]
    public void Every_suggestion_for_the_stalling_scenario_arrives_with_a_load_factor_of_at_least_1_1()
    {
        (int code, string output) = DocCommand.Run("axissim simulate scenarios/heavy-reflector-stalls.toml");
        Assert.Equal(ExitCodes.PredictedFailure, code);
        string advice = output[output.IndexOf("What to try", StringComparison.Ordinal)..output.IndexOf("No help on their own", StringComparison.Ordinal)];
        string[] settings = [.. Setting().Matches(advice).Select(match => match.Groups[1].Value)];
        Assert.InRange(settings.Length, 2, 6);
        Assert.All(settings, setting =>
        {
            AxisResult result = Shipped.Polar("heavy-reflector-stalls", explain: true, setting);
            Assert.Equal(Verdict.Arrives, result.Outcome.Verdict);
            Assert.True(result.Outcome.LoadFactor!.Value >= AskedLoadFactor, $"{setting}: load factor {result.Outcome.LoadFactor.Value}");
        });
    }

    [Fact]
    public void The_rescued_scenario_is_the_stalling_one_with_the_first_suggestion_and_arrives()
    {
        string output = DocCommand.Run("axissim simulate scenarios/heavy-reflector-stalls.toml").Output;
        string first = Setting().Match(output).Groups[1].Value;
        Assert.Equal("counterweight.distance=0.449 m", first);
        AxisResult cured = Shipped.Polar("heavy-reflector-stalls", explain: true, first);
        AxisResult rescued = Shipped.Polar("heavy-reflector-rescued", explain: true);
        Assert.Equal(Verdict.Arrives, rescued.Outcome.Verdict);
        Assert.Equal(cured.Outcome, rescued.Outcome);
        Assert.Equal(ExitCodes.Good, DocCommand.Run("axissim simulate scenarios/heavy-reflector-rescued.toml").Code);
    }

    [GeneratedRegex("--set \"([^\"]+)\"")]
    private static partial Regex Setting();
}
