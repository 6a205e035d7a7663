using System.Globalization;
using AxisSim.Core.Mount;
using AxisSim.Files.Keys;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Files.Units;

namespace AxisSim.Tests.Unit.Files.Maps;

/// <summary>A cell of a map is exactly what the settings of a command line make.</summary>
public sealed class VariantTests
{
    private static readonly string Heavy = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml"));
    private static readonly string Controlled = Heavy + "\n[[controller.settings]]\nname = \"ramp\"\nsets = \"ramp_time\"\nunit = \"0.25 s\"\n";
    private static readonly string Lumped = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml")).Replace("[move]", "[move]\nstart_declination = \"0 deg\"\nend_declination = \"20 deg\"", StringComparison.Ordinal) + "\n[declination]\nlike = \"polar\"\n";

    public static TheoryData<string> Paths => [.. ScenarioKeys.All.Where(IsNumeric).Select(key => key.Path)];

    [Theory]
    [MemberData(nameof(Paths))]
    public void Every_numeric_key_gives_the_setup_of_its_setting(string pattern)
    {
        string text = pattern.Contains(".load.", StringComparison.Ordinal) ? Lumped : pattern.StartsWith("controller", StringComparison.Ordinal) ? Controlled : Heavy;
        string path = pattern.Replace("payload.<name>", pattern.EndsWith("idth", StringComparison.Ordinal) || pattern.EndsWith("height", StringComparison.Ordinal) ? "payload.camera" : "payload.tube", StringComparison.Ordinal).Replace("stages.<name>", "stages.belt", StringComparison.Ordinal).Replace("settings.<name>", "settings.ramp", StringComparison.Ordinal);
        ScenarioKey key = ScenarioKeys.Find(path)!;
        string other = path == "polar.axis.damping_ratio" ? "polar.axis.viscous=0.1..0.3 N*m*s/rad" : "polar.axis.damping_ratio=0.04..0.06";
        MapRange first = Range("--x", path + "=" + RangeOf(key), 5), second = Range("--y", other, 3);
        IReadOnlyList<string> partners = Partners(path, key);
        var variants = new ScenarioVariants(text, "m.toml", LaidOver.Of(partners), first, second);
        Assert.Empty(variants.Problems());

        int valid = 0;
        // Backwards too, so that nothing of the cell before is left over.
        foreach (int i in Enumerable.Range(0, first.Shown.Count).Concat(Enumerable.Range(0, first.Shown.Count).Reverse()))
        {
            string[] settings = [.. partners, first.Setting(first.Shown.Values[i]), second.Setting(second.Shown.Values[i % 3])];
            ScenarioResult told = ScenarioReader.ReadText(text, "m.toml", settings);
            MountSetup? made = variants.Setup(i, i % 3, out Problem? problem);
            Assert.Equal(told.Scenario is null, made is null);
            if (made is null)
            {
                Assert.Equal(told.Problems.First(p => p.Severity == ProblemSeverity.Error).Found, problem!.Found);
                continue;
            }

            valid++;
            Assert.Equal(Text(told.Scenario!.Setup), Text(made));
        }

        Assert.True(valid > 0, $"no valid cell for {path}");
    }

    [Fact]
    public void A_key_replaces_what_it_is_an_alternative_to_and_goes_on_to_the_axis_that_is_like_it()
    {
        MapRange first = Range("--x", "polar.motion.acceleration=1..3 deg/s^2", 3), second = Range("--y", "polar.worm.efficiency=0.3..0.5", 3);
        var variants = new ScenarioVariants(Heavy, "m.toml", LaidOver.Of(["payload.tube.mass=11 kg"]), first, second);
        MountSetup setup = variants.Setup(1, 2, out _)!;
        Assert.Null(setup.Polar!.Motion.Ramp.Seconds);
        Assert.Equal(2.0 * Math.PI / 180.0, setup.Polar.Motion.Ramp.RadiansPerSecondSquared);
        Assert.Equal((0.5, 0.5), (setup.Polar.Train.Worm.GivenDrivingEfficiency, setup.Declination!.Train.Worm.GivenDrivingEfficiency));
        Assert.Equal(1.2, setup.Declination.Motion.Ramp.Seconds);
    }

    [Fact]
    public void Threads_do_not_disturb_each_other()
    {
        MapRange first = Range("--x", "polar.motion.slew_rate=1..5 deg/s", 21), second = Range("--y", "payload.tube.mass=log 5..20 kg", 21);
        var variants = new ScenarioVariants(Heavy, "m.toml", LaidOver.Of([]), first, second);
        Parallel.For(0, 21 * 21, cell =>
        {
            MountSetup setup = variants.Setup(cell / 21, cell % 21, out _)!;
            Assert.Equal(first.Si[cell / 21], setup.Polar!.Motion.SlewRateRadiansPerSecond);
        });
    }

    internal static MapRange Range(string option, string text, int count)
    {
        var reader = new RangeReader(option, text, count);
        MapRange? range = reader.Read();
        Assert.True(range is not null, string.Join('\n', reader.Problems));
        return range;
    }

    private static bool IsNumeric(ScenarioKey key) => key.Kind is KeyKind.Quantity or KeyKind.Number or KeyKind.WholeNumber or KeyKind.Ratio && key.Path != "format";

    private static string Text(MountSetup setup) => OutcomeJson.ToText("setup", ("setup", setup));

    // Other settings that a key needs before it can be given at all.
    private static IReadOnlyList<string> Partners(string path, ScenarioKey key)
    {
        string axis = path.Split('.')[0], end = path.Contains(".start", StringComparison.Ordinal) ? "start" : "end";
        return key.Section switch
        {
            "move.start" or "move.end" => [$"move.{end}.hour_angle=-1 h", $"move.{end}.declination=20 deg", $"move.{end}.pier_side=west"],
            _ when path.EndsWith("worm.back_efficiency", StringComparison.Ordinal) => [$"{axis}.worm.efficiency=0.4"],
            _ when path.EndsWith("belt.backlash", StringComparison.Ordinal) => [$"{axis}.stages.belt.stiffness=400 N*m/rad"],
            "disturbances" when path.EndsWith("wind", StringComparison.Ordinal) || path.EndsWith("gust", StringComparison.Ordinal) => ["disturbances.area=0.3 m^2", "disturbances.lever=0.2 m"],
            _ => [],
        };
    }

    // A fifth about the example, within the bounds of the key.
    private static string RangeOf(ScenarioKey key)
    {
        string example = key.Kind == KeyKind.Ratio ? "3" : key.Example.Trim('"');
        int end = NumberText.Length(example);
        double number = double.Parse(example[..end], CultureInfo.InvariantCulture);
        string unit = example[end..].Trim();
        (double low, double high) = number == 0.0 ? (key.Name == "back_efficiency" ? -0.5 : 0.0, 0.3)
            : key.Kind == KeyKind.WholeNumber ? (number, number + (4 * key.MultipleOf))
            : number < 0.0 ? (1.2 * number, 0.8 * number) : (0.8 * number, 1.2 * number);
        if (key.Unit.Length == 0 || key.Dimension == Dimension.Share)
        {
            high = Math.Min(high, unit == "%" ? 100.0 * key.Maximum : key.Maximum);
        }

        return string.Create(CultureInfo.InvariantCulture, $"{low}..{high} {unit}").Trim();
    }
}
