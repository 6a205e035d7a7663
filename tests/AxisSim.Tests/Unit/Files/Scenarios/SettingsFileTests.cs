using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Settings files: a part of a scenario laid over one, as <c>--settings</c> does.</summary>
public sealed class SettingsFileTests
{
    private static readonly string Heavy = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml"));
    private static readonly string Nominal = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml"));

    [Fact]
    public void A_settings_file_does_what_the_same_settings_do()
    {
        const string file = "[polar.motion]\nslew_rate = \"3 deg/s\"\nacceleration = \"2 deg/s^2\"\n[polar.drive]\nmicrosteps = 32\n[[polar.stages]]\nname = \"belt\"\nratio = \"36/20\"\n[[payload]]\nname = \"tube\"\nforward = \"91 mm\"\n[declination.motion]\nslew_rate = \"2 deg/s\"\n";
        string[] settings = ["polar.motion.slew_rate=3 deg/s", "polar.motion.acceleration=2 deg/s^2", "polar.drive.microsteps=32", "polar.stages.belt.ratio=36/20", "payload.tube.forward=91 mm", "declination.motion.slew_rate=2 deg/s"];
        Assert.Equal(Setup(LaidOver.Of(settings)), Setup(One(file)));
    }

    [Fact]
    public void Of_several_the_later_holds_and_a_setting_wins_over_all()
    {
        LaidOver both = new([new("a.toml", "[polar.motion]\nramp_time = \"3 s\"\nslew_rate = \"2 deg/s\"\n"), new("b.toml", "[polar.motion]\nacceleration = \"2 deg/s^2\"\n")], []);
        Assert.Equal(Setup(LaidOver.Of(["polar.motion.slew_rate=2 deg/s", "polar.motion.acceleration=2 deg/s^2"])), Setup(both));
        Assert.Equal(Setup(LaidOver.Of(["polar.motion.slew_rate=2 deg/s", "polar.motion.ramp_time=1 s"])), Setup(both with { Settings = ["polar.motion.ramp_time=1 s"] }));
        Assert.NotEqual(ScenarioReader.Hash(Heavy, LaidOver.Nothing), ScenarioReader.Hash(Heavy, both));
    }

    [Fact]
    public void A_polar_setting_goes_on_to_an_axis_that_is_like_it_unless_it_has_its_own()
    {
        Scenario scenario = Read(Heavy, One("[polar.drive]\nmicrosteps = 16\n[polar.motion]\nacceleration = \"4 deg/s^2\"\n"));
        Assert.Equal(16, scenario.Setup.Declination!.Drive.MicrostepsPerFullStep);
        Assert.NotNull(scenario.Setup.Declination.Motion.Ramp.Seconds);

        // A ramp that came along from the polar axis gives way to an acceleration of its own.
        string plain = Heavy.Replace("[declination.motion]\nramp_time = \"2 s\"", "[declination.motion]", StringComparison.Ordinal);
        Scenario own = Read(plain, LaidOver.Of(["polar.motion.ramp_time=2 s", "declination.motion.acceleration=3 deg/s^2"]));
        Assert.Null(own.Setup.Declination!.Motion.Ramp.Seconds);
    }

    [Fact]
    public void Every_problem_is_told_at_once_by_the_lines_of_its_file()
    {
        const string file = "[polar.motion]\nslew_rat = \"3 deg/s\"\nramp_time = 2\n[polar.gears]\nx = 1\n[ra.drive]\nmicrosteps = \"32\"\n[[payload]]\nname = \"tub\"\nmass = \"2 kg\"\n";
        ScenarioResult result = ScenarioReader.ReadText(Heavy, "m.toml", One(file));
        Assert.Null(result.Scenario);
        string[] told = [.. result.Problems.Select(problem => problem.ToString())];
        Assert.All(told, line => Assert.StartsWith("s.toml:", line, StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:2: polar.motion.slew_rat: found a key that does not exist (did you mean polar.motion.slew_rate?)", StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:3: polar.motion.ramp_time: found 2 (a number without its unit)", StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:4: polar.gears: found a section that does not exist", StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:6: ra.drive: found ra, the axis that is called polar here", StringComparison.Ordinal) && line.EndsWith("write: [polar.drive]", StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:7: polar.drive.microsteps: found \"32\"", StringComparison.Ordinal));
        Assert.Contains(told, line => line.StartsWith("s.toml:8: payload.tub: found an item \"tub\" that is not there (did you mean tube?)", StringComparison.Ordinal) && line.EndsWith("write: name = \"tube\"", StringComparison.Ordinal));
        Assert.Equal(6, told.Length);
    }

    [Theory]
    [InlineData("", "s.toml: found nothing to lay over the scenario")]
    [InlineData("# nothing\n", "s.toml: found nothing to lay over the scenario")]
    [InlineData("[polar.motion\nslew_rate = \"1 deg/s\"\n", "s.toml:1: found \"[polar.motion\", which is not TOML")]
    [InlineData("[polar.motion]\nramp_time = \"2 s\"\nacceleration = \"1 deg/s^2\"\n", "s.toml:3: polar.motion.acceleration: found \"1 deg/s^2\" besides ramp_time (\"2 s\"); allowed: ramp_time or acceleration, one of them")]
    [InlineData("[polar.motion]\nslew_rate = \"900 deg/s\"\n", "s.toml:2: polar.motion.slew_rate: found \"900 deg/s\"")]
    [InlineData("[polar.drive]\nslew_current = \"5 A\"\n", "s.toml:2: polar.drive.slew_current: found \"5 A\" (5 A peak")]
    public void A_settings_file_that_will_not_do(string file, string message)
    {
        ScenarioResult result = ScenarioReader.ReadText(Heavy, "m.toml", One(file));
        Assert.Null(result.Scenario);
        Assert.StartsWith(message, Assert.Single(result.Problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_whole_scenario_is_no_settings_file()
    {
        Problem problem = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", LaidOver.Of(new SettingsFile("other.toml", Nominal))).Problems);
        Assert.Equal("other.toml: found a whole scenario, not settings to lay over one; allowed: some keys and values of a scenario, in the form of a scenario; write: other.toml as FILE, without --settings; or only the keys that are to change", problem.ToString());
    }

    [Theory]
    [InlineData("[declination.motion]\nslew_rate = \"3 deg/s\"\nramp_time = \"1 s\"\n[declination.drive]\nslew_current = \"1 A\"\n", "s.toml:2: declination.motion.slew_rate: found \"3 deg/s\" for the declination axis, which this scenario does not have; allowed: settings of the polar axis, the only one here; write: slew_rate = \"3 deg/s\" under [polar.motion], if it is meant for that axis")]
    [InlineData(null, "--set:1: declination.motion.slew_rate: found \"3 deg/s\" for the declination axis, which this scenario does not have; allowed: settings of the polar axis, the only one here; write: --set \"polar.motion.slew_rate=3 deg/s\", if it is meant for that axis")]
    public void Settings_for_an_axis_that_is_not_there_are_told_once(string? file, string message)
    {
        LaidOver laid = file is null ? LaidOver.Of(["declination.motion.slew_rate=3 deg/s", "declination.motion.ramp_time=2 s"]) : One(file);
        Assert.Equal(message, Assert.Single(ScenarioReader.ReadText(Nominal, "m.toml", laid).Problems).ToString());
    }

    [Fact]
    public void A_new_item_of_a_list_needs_all_that_an_item_needs()
    {
        Scenario scenario = Read(Heavy, One("[[payload]]\nname = \"finder\"\nshape = \"point\"\nmass = \"0.5 kg\"\nout = \"0.4 m\"\n[[polar.stages]]\nname = \"second\"\nratio = 1.5\nefficiency = 0.96\n"));
        Assert.Equal("finder", scenario.Payload!.Bodies[^1].Name);
        Assert.Equal(["belt", "second"], scenario.Setup.Polar!.Train.Stages.Select(stage => stage.Name));
        Problem problem = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", One("[[payload]]\nname = \"zenith-prism\"\nmass = \"0.5 kg\"\n")).Problems);
        Assert.StartsWith("s.toml:1: payload.zenith-prism: found an item \"zenith-prism\" that is not there; allowed: items of payload: tube, mirror, camera, guider, plate; or a new one with at least", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_reads_back_as_what_it_was_made_of_and_carries_what_was_laid_over_before()
    {
        LaidOver before = new([new("a.toml", "[polar.motion]\nslew_rate = \"2 deg/s\"\nacceleration = \"2 deg/s^2\"\n[[payload]]\nname = \"finder\"\nshape = \"point\"\nmass = \"0.5 kg\"\nout = \"0.4 m\"\n")], ["polar.drive.slew_current=0.8 A", "counterweight.distance=0.4 m"]);
        Scenario scenario = Read(Heavy, before);
        string[] found = ["polar.motion.ramp_time=1.5 s", "polar.drive.changeover=never", "polar.drive.microsteps=32", "polar.stages.belt.ratio=36/20", "polar.axis.backlash=20 arcsec", "polar.worm.friction=.09", "counterweight.distance=0.41 m", "payload.finder.mass=0.6 kg"];
        string text = SettingsText.Of(scenario, ["what it is"], [.. found.Select(setting => new NotedSetting(setting, "a note"))]);
        LaidOver all = before.With(found);
        Scenario again = Read(Heavy, LaidOver.Of(new SettingsFile("again.toml", text)));

        // The item that is not in the file comes from the settings file, so the setting on it is read last there too.
        Assert.Equal(Text(Read(Heavy, all)), Text(again));
        Assert.StartsWith("# what it is\n", text, StringComparison.Ordinal);
        Assert.Contains("ramp_time = \"1.5 s\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("acceleration", text, StringComparison.Ordinal);
        Assert.Contains("slew_current = \"0.8 A\"  # as when this was found: by --set", text, StringComparison.Ordinal);
        Assert.Matches(@"slew_rate = ""2 deg/s""\s+# as when this was found: from a\.toml", text);
        Assert.DoesNotContain("0.4 m\"  # as", text.Replace("out = \"0.4 m\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.All(text.Split('\n').Where(line => line.Contains('=', StringComparison.Ordinal) && !line.StartsWith('#') && !line.StartsWith("name", StringComparison.Ordinal)), line => Assert.Contains("  # ", line, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("polar.motion.slew_rate=1.5 deg/s")]
    [InlineData("polar.drive.microsteps=16")]
    [InlineData("polar.drive.changeover=3 rad/s")]
    [InlineData("polar.drive.regulator_time=60 us")]
    [InlineData("polar.stages.belt.ratio=2")]
    [InlineData("polar.drive.damping_share=0.02")]
    public void Settings_for_the_polar_axis_alone_leave_the_other_as_it_is(string setting)
    {
        Scenario before = Read(Heavy, LaidOver.Nothing);
        string[] all = [setting, .. before.KeptDeclination([setting])];
        Scenario after = Read(Heavy, LaidOver.Of(all)), file = Read(Heavy, LaidOver.Of(new SettingsFile("s.toml", SettingsText.Of(before, [], [.. all.Select(one => new NotedSetting(one, ""))]))));
        string Axis(Scenario scenario) => OutcomeJson.ToText("axis", ("axis", scenario.Setup.Declination));
        Assert.Equal(Axis(before), Axis(after));
        Assert.Equal(Axis(before), Axis(file));
        Assert.NotEqual(OutcomeJson.ToText("axis", ("axis", before.Setup.Polar)), OutcomeJson.ToText("axis", ("axis", after.Setup.Polar)));
        Assert.Empty(Read(Nominal, LaidOver.Nothing).KeptDeclination([setting]));
    }

    private static LaidOver One(string file) => LaidOver.Of(new SettingsFile("s.toml", file));

    private static string Setup(LaidOver laid) => Text(Read(Heavy, laid));

    // All that the scenario holds but its hash and the places of its notes.
    private static string Text(Scenario scenario) => OutcomeJson.ToText("scenario", ("scenario", scenario with { Sha256 = "" }));

    private static Scenario Read(string text, LaidOver laid)
    {
        ScenarioResult result = ScenarioReader.ReadText(text, "m.toml", laid);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario;
    }
}
