using System.Globalization;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Files.Units;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Settings of the command line.</summary>
public sealed class SettingTests
{
    private static readonly string Heavy = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml"));
    private static readonly string Controlled = Heavy + "\n[[controller.settings]]\nname = \"ramp\"\nsets = \"ramp_time\"\nunit = \"0.25 s\"\n";
    private static readonly string Lumped = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml")).Replace("[move]", "[move]\nstart_declination = \"0 deg\"\nend_declination = \"20 deg\"", StringComparison.Ordinal) + "\n[declination]\nlike = \"polar\"\n";

    public static TheoryData<string> Paths => [.. ScenarioKeys.All.Select(key => key.Path)];

    [Theory]
    [MemberData(nameof(Paths))]
    public void A_setting_reaches_the_key(string pattern)
    {
        ScenarioKey key = ScenarioKeys.Find(pattern.Replace("<name>", "x", StringComparison.Ordinal))!;
        string text = pattern.Contains(".load.", StringComparison.Ordinal) ? Lumped : pattern.StartsWith("controller", StringComparison.Ordinal) ? Controlled : Heavy;
        string path = pattern.Replace("payload.<name>", pattern.EndsWith("idth", StringComparison.Ordinal) || pattern.EndsWith("height", StringComparison.Ordinal) ? "payload.camera" : "payload.tube", StringComparison.Ordinal).Replace("stages.<name>", "stages.belt", StringComparison.Ordinal).Replace("settings.<name>", "settings.ramp", StringComparison.Ordinal);

        Problem problem = Assert.Single(ScenarioReader.ReadText(text, "m.toml", [.. Partners(path, key), $"{path}={Bad(key)}"]).Problems, problem => problem.Key == path);
        Assert.Equal("--set", problem.File);
        Assert.Equal(Partners(path, key).Count + 1, problem.Line);

        if (pattern is "format" or "declination.like")
        {
            return; // these have one allowed value only
        }

        string[] results = [.. Values(key).Select(value => Read(text, [.. Partners(path, key), $"{path}={value}"]))];
        Assert.True(results.Distinct(StringComparer.Ordinal).Count() > 1, $"the setting of {path} changed nothing");
    }

    [Fact]
    public void Quotes_and_spaces_around_a_setting_do_not_count()
    {
        string plain = Read(Heavy, ["payload.tube.mass=16 kg"]);
        Assert.Equal(plain, Read(Heavy, [" payload.tube.mass = \"16 kg\" "]));
        Assert.Equal(plain, Read(Heavy, ["payload.tube.mass='16 kg'"]));
        Assert.Equal(plain, Read(Heavy, ["payload.tube.mass=15 kg", "payload.tube.mass=16 kg"]));
    }

    [Theory]
    [InlineData("polar.drive.slew_curent=1 A", "polar.drive.slew_curent", "write: --set polar.drive.slew_current=\"1 A\"")]
    [InlineData("polar.motion.ramp=2 s", "polar.motion.ramp", "write: --set polar.motion.ramp_time=\"2 s\"")]
    [InlineData("payload.tub.mass=16 kg", "payload.tub.mass", "items of payload: tube, mirror, camera, guider, plate; write: --set payload.tube.mass=\"16 kg\"")]
    [InlineData("polar.stages.gear.ratio=5", "polar.stages.gear.ratio", "items of polar.stages: belt")]
    [InlineData("slew_current", "", "there is no = in it")]
    [InlineData("=5 A", "", "there is no key before the =")]
    [InlineData("polar.drive.slew_current=", "polar.drive.slew_current", "empty")]
    [InlineData("polar=3", "polar", "a key that does not exist")]
    [InlineData("payload.tube=3", "payload.tube", "a key that does not exist")]
    public void A_bad_setting_is_told_like_a_bad_key(string setting, string key, string holds)
    {
        Problem problem = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.worm.teeth=150", setting]).Problems);
        Assert.Equal(("--set", 2, key), (problem.File, problem.Line, problem.Key));
        Assert.Contains(holds, problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_replaces_its_alternative()
    {
        Scenario scenario = ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.acceleration=3 deg/s^2", "polar.worm.efficiency=0.4"]).Scenario!;
        Assert.Null(scenario.Setup.Polar!.Motion.Ramp.Seconds);
        Assert.Equal(0.4, scenario.Setup.Polar.Train.Worm.GivenDrivingEfficiency);
        Assert.Equal(1.2, scenario.Setup.Declination!.Motion.Ramp.Seconds);
        Assert.Equal(0.4, scenario.Setup.Declination.Train.Worm.GivenDrivingEfficiency);
    }

    [Fact]
    public void A_setting_of_the_polar_axis_goes_on_to_the_axis_that_is_like_it_and_its_own_setting_wins()
    {
        Scenario scenario = ScenarioReader.ReadText(Heavy, "m.toml", ["declination.drive.slew_current=0.7 A", "polar.drive.slew_current=0.8 A", "polar.stages.belt.ratio=2", "declination.stages.belt.ratio=60/20"]).Scenario!;
        Assert.Equal((0.8, 0.7), (scenario.Setup.Polar!.Drive.SlewCurrentAmperes, scenario.Setup.Declination!.Drive.SlewCurrentAmperes));
        Assert.Equal((288.0, 432.0), (scenario.Setup.Polar.Train.TotalRatio, scenario.Setup.Declination.Train.TotalRatio));
        Assert.Equal((1.2, 0.9), (scenario.Setup.Polar.Bearings.CoulombNewtonMetres, scenario.Setup.Declination.Bearings.CoulombNewtonMetres));
    }

    [Fact]
    public void The_hash_follows_text_and_settings()
    {
        string[] hashes = [Hash(Heavy, []), Hash(Heavy, ["polar.worm.teeth=150"]), Hash(Heavy + "\n", [])];
        Assert.Equal(3, hashes.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(hashes[0], Hash(Heavy, []));
        Assert.Matches("^[0-9a-f]{64}$", hashes[0]);
    }

    [Fact]
    public void Changeover_at_the_axis_and_at_the_motor_mean_the_same_speed()
    {
        double Changeover(string value) => ScenarioReader.ReadText(Heavy, "m.toml", [$"polar.drive.changeover={value}"]).Scenario!.Setup.Polar!.Drive.ChangeoverRadiansPerSecond;
        // 2 deg/s at the axis x 216 = 432 deg/s = 72 rpm = 480 steps/s of 400 = 7.5398 rad/s at the motor.
        double expected = 432.0 * Math.PI / 180.0;
        Assert.All(["2 deg/s", "7200 arcsec/s", "72 rpm", "480 steps/s", "1.2 rev/s", "7.5398223686155035 rad/s"], value => Assert.Equal(expected, Changeover(value), 12));
        Assert.Equal(double.PositiveInfinity, Changeover("never"));
    }

    internal static string Read(string text, IReadOnlyList<string> settings)
    {
        ScenarioResult result = ScenarioReader.ReadText(text, "m.toml", settings);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return OutcomeJson.ToText("scenario", ("scenario", result.Scenario with { Sha256 = "", Notes = [] }));
    }

    private static string Hash(string text, IReadOnlyList<string> settings) => ScenarioReader.ReadText(text, "m.toml", settings).Scenario!.Sha256;

    private static string Bad(ScenarioKey key) => key.Kind == KeyKind.Text ? new string('x', 5000) : "?!";

    // Other settings that a key needs before it can be given at all, or before it matters.
    private static IReadOnlyList<string> Partners(string path, ScenarioKey key)
    {
        string axis = path.Split('.')[0], end = path.Contains(".start", StringComparison.Ordinal) ? "start" : "end";
        List<string> all = key.Section switch
        {
            "move.start" or "move.end" => [$"move.{end}.hour_angle=-1 h", $"move.{end}.declination=20 deg", $"move.{end}.pier_side=west"],
            _ when path.EndsWith("worm.back_efficiency", StringComparison.Ordinal) => [$"{axis}.worm.efficiency=0.4"],
            _ when path.EndsWith("motor.wiring", StringComparison.Ordinal) => [$"{axis}.motor.figures_for=half-coil"],
            _ when path.EndsWith("motor.figures_for", StringComparison.Ordinal) => [$"{axis}.motor.wiring=bipolar-series"],
            _ when path.EndsWith("belt.backlash", StringComparison.Ordinal) => [$"{axis}.stages.belt.stiffness=400 N*m/rad"],
            _ when path.EndsWith("drive.microsteps", StringComparison.Ordinal) => [$"{axis}.drive.max_pulse_rate=10 MHz"],
            _ when path.EndsWith("tube.shape", StringComparison.Ordinal) => ["payload.tube.width=0.1 m", "payload.tube.height=0.1 m"],
            _ when path.EndsWith("counterweight.distance", StringComparison.Ordinal) => ["counterweight.greatest_distance=10 m"],
            "disturbances" when path.EndsWith("wind", StringComparison.Ordinal) || path.EndsWith("gust", StringComparison.Ordinal) => ["disturbances.area=0.3 m^2", "disturbances.lever=0.2 m"],
            _ => [],
        };
        return [.. all.Where(setting => !setting.StartsWith(path + "=", StringComparison.Ordinal))];
    }

    private static IEnumerable<string> Values(ScenarioKey key)
    {
        string example = key.Example.Trim('"');
        return key.Kind switch
        {
            // Of the same dimension, for the unit stays.
            KeyKind.Choice when key.Path.EndsWith(".sets", StringComparison.Ordinal) => ["ramp_time", "current_fall_delay"],
            KeyKind.Choice => key.Choices,
            KeyKind.Flag => ["true", "false"],
            KeyKind.Text => ["first", "second"],
            KeyKind.Ratio => ["2", "3/2"],
            _ => Numbers(key, example),
        };
    }

    private static IEnumerable<string> Numbers(ScenarioKey key, string example)
    {
        // Small changes of values that the heavy reflector has room for; around its own values where these are tied to others.
        int end = NumberText.Length(example);
        double number = double.Parse(example[..end], CultureInfo.InvariantCulture);
        string unit = example[end..];
        double step = key.MultipleOf > 1 ? key.MultipleOf : key.Kind == KeyKind.WholeNumber ? 1.0 : number == 0.0 ? 0.25 : Math.Abs(number) * 0.04;
        double other = number + step <= key.Maximum || key.Unit.Length == 0 && key.Maximum > 1 ? number + step : number - step;
        (double first, double second) = key.Name switch
        {
            "holding_torque" or "rated_current" => (0.95, 1.05),
            "slew_current" or "tracking_current" or "holding_current" => (0.8, 0.85),
            "friction" when key.Section.EndsWith(".axis", StringComparison.Ordinal) => (0.5, 0.6),
            "breakaway" => (1.6, 1.7),
            "inner_diameter" => (0.30, 0.305),
            "diameter" when key.Section.StartsWith("payload", StringComparison.Ordinal) => (0.33, 0.34),
            "distance" => (0.38, 0.39),
            "start_rate" => (100, 120),
            _ => (number, other),
        };
        return [first.ToString(CultureInfo.InvariantCulture) + unit, second.ToString(CultureInfo.InvariantCulture) + unit];
    }
}
