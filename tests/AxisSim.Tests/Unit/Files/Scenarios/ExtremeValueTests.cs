using System.Globalization;
using AxisSim.Core.Batches;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using Xunit.Abstractions;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Each number of a scenario at the very ends of what its key allows, alone: refused with a message, or simulated to a verdict.</summary>
[Trait("speed", "slow")]
public sealed class ExtremeValueTests(ITestOutputHelper log)
{
    // As near to a bound that is excluded as a value can be written.
    private const double Next = 1e-300;
    private const double LongestRunSeconds = 20.0;
    private static readonly string[] Short = ["move.end_polar=-44.9 deg", "move.end_declination=20.1 deg", "move.observe=0.4 s"];

    [Theory]
    [InlineData("light-refractor")]
    [InlineData("heavy-reflector")]
    [InlineData("nominal")]
    public void No_allowed_value_breaks_the_model(string name)
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", name + ".toml"));
        string[] move = [.. Short.Where(setting => name != "nominal" || !setting.Contains("declination", StringComparison.Ordinal)).Select(setting => setting.Replace("-44.9", name == "light-refractor" ? "-44.9" : name == "nominal" ? "0.1" : "-4.9", StringComparison.Ordinal))];
        string[] own = [.. move.Select(setting => setting.Split('=')[0])];
        var cases = new List<(string Setting, BatchCase Case)>();
        int refused = 0;
        foreach (string setting in Settings(text).Where(setting => !own.Contains(setting.Split('=')[0])))
        {
            ScenarioResult result = ScenarioReader.ReadText(text, "mount.toml", [.. move, setting]);
            if (result.Scenario is not { } scenario)
            {
                refused++;
                Assert.All(result.Problems, problem => Assert.NotEmpty(problem.ToString()));
                continue;
            }

            DerivedFacts facts = Facts.Of(scenario.Setup, MountAxis.Polar);
            Assert.True(double.IsFinite(facts.TotalReduction), setting);
            foreach (MountAxis axis in new[] { MountAxis.Polar, MountAxis.Declination }.Where(axis => (axis == MountAxis.Polar ? scenario.Setup.Polar : scenario.Setup.Declination) is not null))
            {
                cases.Add((setting, new BatchCase(scenario.Setup, axis)));
            }
        }

        (string Setting, BatchCase Case)[] run = [.. cases.Where(item => new MovePlan(item.Case.Setup).EndSeconds < LongestRunSeconds)];
        BatchResult[] results = BatchStudy.Run([.. run.Select(item => item.Case)], new BatchOptions { Depth = BatchDepth.Settling });
        string[] broken = [.. run.Zip(results).Where(pair => pair.Second.End is BatchEnd.Broken or BatchEnd.NotWorkable).Select(pair => $"{pair.First.Setting} ({pair.First.Case.Axis}): {pair.Second.End}")];
        log.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{run.Length} of {cases.Count} run, {refused} refused; {results.GroupBy(result => result.End).Select(group => $"{group.Key} {group.Count()}").Aggregate((a, b) => a + ", " + b)}"));
        Assert.True(run.Length > 100, "hardly any was run");
        Assert.True(broken.Length == 0, string.Join('\n', broken));
    }

    private static IEnumerable<string> Settings(string text)
    {
        ScenarioDocument document = ScenarioReader.Lay(text, "mount.toml", []);
        foreach (ScenarioKey key in ScenarioKeys.All.Where(key => key.Kind is KeyKind.Quantity or KeyKind.Number or KeyKind.WholeNumber or KeyKind.Ratio))
        {
            string? list = Array.Find(ScenarioKeys.Lists, list => key.Path.StartsWith(list + ".", StringComparison.Ordinal));
            string[] paths = list is null ? [key.Path] : [.. document.ItemsOf(list).Select(item => key.Path.Replace("<name>", item, StringComparison.Ordinal))];
            double least = key.Bound.AboveLeast || (key.Kind == KeyKind.Ratio && key.Minimum == 0.0) ? key.Minimum + Next : key.Minimum;
            foreach (double value in new[] { least, key.Maximum })
            {
                string unit = key.Unit.Length > 0 ? " " + key.Unit : key.Dimension == AxisSim.Files.Units.Dimension.AxisOrMotorRate ? " rad/s" : "";
                foreach (string path in paths)
                {
                    yield return $"{path}={value.ToString("R", CultureInfo.InvariantCulture)}{unit}";
                }
            }
        }
    }
}
