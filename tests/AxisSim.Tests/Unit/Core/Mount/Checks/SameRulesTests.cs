using System.Globalization;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;
using AxisSim.Tests.Docs;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Mount.Checks;

/// <summary>A figure that a scenario file may not hold is refused in a setup made in code, and the other way round.</summary>
public sealed class SameRulesTests
{
    private static readonly MountSetup s_nominal = Shipped.Read("nominal").Setup;

    /// <summary>Numbers that no figure of a setup holds as they are: of bodies, of the sky, of what is not known exactly, of a user's own controller, of lumped loads.</summary>
    private static readonly string[] s_elsewhere = ["payload.", "counterweight.", "tolerances.", "controller.", "polar.load.", "move.start.", "move.end.", "site.", "format", "declination."];

    private static readonly string[][] s_wholes = [["polar.motion.ramp_time", "polar.motion.acceleration"], ["polar.worm."], ["polar.axis.friction", "polar.axis.breakaway", "polar.axis.viscous"], ["polar.flexible."], ["move.start", "move.end"], ["polar.drive.damping"]];

    public static TheoryData<string> Keys => [.. SetupTable.All.Select(figure => figure.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Both_refuse_the_same(string key)
    {
        SetupFigure figure = SetupTable.All.Single(one => one.Key == key);
        int refused = 0;
        foreach (double number in Numbers(figure))
        {
            bool byFile = FileRefuses([(figure, number)], out string why);
            bool byCore = CoreRefuses(figure.Apply(s_nominal, Si(figure, number)), out string core);
            Assert.True(byFile == byCore, Invariant($"{key} = {number} {UnitOf(figure)}: the file says \"{why}\", Core \"{core}\""));
            refused += byFile ? 1 : 0;
        }

        Assert.InRange(refused, 1, Numbers(figure).Count - 1); // else nothing was asked
        Assert.True(CoreRefuses(figure.Apply(s_nominal, double.NaN), out _) || ScenarioKeys.Find(key)!.Kind == KeyKind.WholeNumber);
    }

    /// <summary>Several figures at once, so that what they must keep together is asked too.</summary>
    [Fact]
    public void Both_refuse_the_same_of_several()
    {
        Gen<(SetupFigure, double)> one = Gen.Int[0, SetupTable.All.Count - 1].SelectMany(i => Gen.Int[0, Numbers(SetupTable.All[i]).Count - 1].Select(n => Numbers(SetupTable.All[i])[n]).Select(number => (SetupTable.All[i], number)));
        one.Array[2, 4].Where(Independent)
            .Sample(many =>
            {
                MountSetup setup = many.Aggregate(s_nominal, (mount, pair) => pair.Item1.Apply(mount, Si(pair.Item1, pair.Item2)));
                bool byFile = FileRefuses(many, out string why);
                bool byCore = CoreRefuses(setup, out string core);
                Assert.True(byFile == byCore, Invariant($"{string.Join(", ", many.Select(pair => Invariant($"{pair.Item1.Key} = {pair.Item2} {UnitOf(pair.Item1)}")))}: the file says \"{why}\", Core \"{core}\""));
            }, iter: 200);
    }

    /// <summary>Figures that do not write over each other: their settings differ, and no two are of a group that is made as a whole.</summary>
    private static bool Independent((SetupFigure Figure, double Number)[] many)
    {
        string[] keys = [.. many.SelectMany(pair => pair.Figure.With.Select(setting => setting[..setting.IndexOf('=', StringComparison.Ordinal)]).Append(pair.Figure.Key))];
        return keys.Distinct().Count() == keys.Length && s_wholes.All(whole => many.Count(pair => whole.Any(start => pair.Figure.Key.StartsWith(start, StringComparison.Ordinal))) < 2);
    }

    [Fact]
    public void Every_number_of_a_scenario_is_asked()
    {
        IEnumerable<string> numbers = ScenarioKeys.All.Where(key => key.Kind is KeyKind.Quantity or KeyKind.Number or KeyKind.WholeNumber or KeyKind.Ratio).Select(key => key.Path)
            .Where(path => !s_elsewhere.Any(start => path.StartsWith(start, StringComparison.Ordinal)));
        Assert.Equal(numbers.Order(StringComparer.Ordinal), SetupTable.All.Select(figure => figure.Key.Replace("stages.belt.", "stages.<name>.", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Shipped_scenarios_have_no_problems() =>
        Assert.All(Repository.Scenarios, path => Assert.Empty(SetupChecks.Problems(ScenarioReader.ReadFile(path, []).Scenario!.Setup)));

    /// <summary>Ends of the bounds, either side of them, and what is always wrong, in the unit that the key is written in.</summary>
    private static List<double> Numbers(SetupFigure figure)
    {
        ScenarioKey key = ScenarioKeys.Find(figure.Key)!;
        bool whole = key.Kind == KeyKind.WholeNumber;
        double low = key.Minimum, high = double.IsFinite(key.Maximum) ? key.Maximum : 50.0;
        if (whole)
        {
            return [low - key.MultipleOf, low, low + key.MultipleOf, high, high + key.MultipleOf];
        }

        double span = high - low;
        List<double> numbers = [low - (1e-3 * span), low + (1e-3 * span), low + (0.1 * span), high - (1e-3 * span), high + (1e-3 * span), 0.5 * high, -10.0 * high];
        if (figure.Key != "polar.motor.thermal_resistance")
        {
            numbers.Add(low); // a setup made in code may leave heating out by 0 K/W
        }

        return numbers;
    }

    private static string UnitOf(SetupFigure figure)
    {
        ScenarioKey key = ScenarioKeys.Find(figure.Key)!;
        return figure.Unit.Length > 0 ? figure.Unit : key.Kind == KeyKind.Quantity && key.Dimension != Dimension.Share ? key.Unit : "";
    }

    private static double Si(SetupFigure figure, double number) =>
        UnitOf(figure) is { Length: > 0 } unit ? UnitTable.Find(ScenarioKeys.Find(figure.Key)!.Dimension, unit)!.ToSi(number) : number;

    private static bool FileRefuses(IEnumerable<(SetupFigure Figure, double Number)> many, out string why)
    {
        ScenarioResult result = ScenarioReader.ReadFile(
            Repository.PathOf("scenarios", "nominal.toml"),
            [.. many.SelectMany(pair => pair.Figure.With), .. many.Select(pair => Invariant($"{pair.Figure.Key}={pair.Number} {UnitOf(pair.Figure)}").TrimEnd())]);
        why = string.Join(" | ", result.Problems.Where(problem => problem.Severity == ProblemSeverity.Error));
        return result.Scenario is null;
    }

    // A file also refuses what no step can follow; in code a run ends so.
    private static bool CoreRefuses(MountSetup setup, out string why)
    {
        why = string.Join(" | ", SetupChecks.Problems(setup));
        return why.Length > 0 || !StepChoice.For(setup, MountAxis.Polar, StepChoice.DefaultSeconds).Workable;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
