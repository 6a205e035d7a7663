using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Cli.Text;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Report.Text;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>A whole scenario made of a file and what is laid over it.</summary>
public sealed class ScenarioTextTests
{
    public static TheoryData<string> Shipped => [.. Repository.Scenarios.Select(path => Path.GetFileNameWithoutExtension(path))];

    private static readonly Dictionary<string, string> NoNotes = [];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void It_reads_and_runs_as_the_file_with_the_settings_does(string name)
    {
        string path = Repository.PathOf("scenarios", name + ".toml"), text = File.ReadAllText(path);
        bool ramp = ScenarioReader.ReadText(text, path, []).Scenario!.Setup.Polar!.Motion.Ramp.Seconds is not null;
        bool bodies = text.Contains("[[payload]]", StringComparison.Ordinal);
        string[] settings =
        [
            "polar.motion.slew_rate=1.7 deg/s", ramp ? "polar.motion.acceleration=1.3 deg/s^2" : "polar.motion.ramp_time=1.7 s", "polar.drive.changeover=never", "polar.drive.regulator_time=41 us", "polar.axis.damping_ratio=0.04", "move.observe=3 s",
            .. bodies ? ["counterweight.distance=0.31 m", "payload.tube.side=3 mm", "payload.tube.direction=forward", "tolerances.friction=20 %"] : Array.Empty<string>(),
            .. text.Contains("like = \"polar\"", StringComparison.Ordinal) ? ["declination.drive.tracking_current=0.5 A", "declination.motion.ramp_time=2.2 s", "declination.motion.slew_rate=1.9 deg/s", "declination.worm.runout=9 arcsec"] : Array.Empty<string>(),
        ];
        Scenario laid = Read(text, LaidOver.Of(settings)), whole = Read(Written(laid), LaidOver.Nothing);
        Assert.Equal(Values(laid), Values(whole));
        foreach (MountAxis axis in AxisNames.Of(laid.Setup))
        {
            BatchResult[] runs = BatchStudy.Run([new BatchCase(laid.Setup, axis), new BatchCase(whole.Setup, axis)], new BatchOptions { Depth = BatchDepth.Settling });
            Assert.Equal(runs[0], runs[1]);
        }

        // Not a line of the user's own words is lost, and each line that changes says so.
        string[] after = Written(laid).Split('\n');
        Assert.All(text.Split('\n').Where(line => line.Contains('#', StringComparison.Ordinal)).Select(line => line[line.IndexOf('#', StringComparison.Ordinal)..]), comment => Assert.Contains(after, line => line.EndsWith(comment, StringComparison.Ordinal)));
        Assert.Contains(after, line => line.StartsWith("# by --set; before: ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[polar]\nmotion = { slew_rate = \"1 deg/s\", ramp_time = \"2 s\" } # in braces\n", "motion = { slew_rate = \"1 deg/s\", acceleration = \"1 deg/s^2\" } # in braces")]
    [InlineData("[polar]\nmotion = { ramp_time = \"2 s\", slew_rate = \"1 deg/s\" } # in braces\n", "motion = { slew_rate = \"1 deg/s\", acceleration = \"1 deg/s^2\" } # in braces")]
    [InlineData("[polar]\nmotion.slew_rate = \"1 deg/s\"\nmotion.ramp_time = \"2 s\" # dotted\n", "# motion.ramp_time = \"2 s\" # dotted\nmotion.acceleration = \"1 deg/s^2\"  # by --set\n")]
    [InlineData("  [polar.motion]\n  slew_rate = \"1 deg/s\"\n  ramp_time = \"2 s\" # indented\n", "  # ramp_time = \"2 s\" # indented\n  acceleration = \"1 deg/s^2\"  # by --set\n")]
    [InlineData("[polar.motion] # é, € and \U0001F52D stand before\r\nslew_rate = \"1 deg/s\"\r\nramp_time = \"2 s\"", "\r\n# ramp_time = \"2 s\"\r\nacceleration = \"1 deg/s^2\"  # by --set\r\n")]
    public void It_keeps_the_form_of_the_file(string motion, string holds)
    {
        string text = Rest + (motion.StartsWith("[polar]", StringComparison.Ordinal) ? Rest2 + motion : Rest2.Replace("\n", motion.Contains('\r', StringComparison.Ordinal) ? "\r\n" : "\n", StringComparison.Ordinal) + motion);
        Scenario laid = Read(text, LaidOver.Of(["polar.motion.acceleration=1 deg/s^2"]));
        string written = Written(laid);
        Assert.Contains(holds, written, StringComparison.Ordinal);
        Assert.Equal(Values(laid), Values(Read(written, LaidOver.Nothing)));
    }

    [Fact]
    public void A_stage_of_the_declination_axis_that_is_like_the_polar_one_is_written_whole()
    {
        Scenario laid = Read(File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")), LaidOver.Of(["declination.stages.belt.ratio=2"]));
        string written = Written(laid);
        Assert.Contains("[[declination.stages]]\nname = \"belt\"", written, StringComparison.Ordinal);
        Assert.Equal(Values(laid), Values(Read(written, LaidOver.Nothing)));
    }

    [Fact]
    public void A_new_body_and_a_new_section_find_their_place()
    {
        Scenario laid = Read(File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")), LaidOver.Of(new SettingsFile("s.toml", "[[payload]]\nname = \"finder\"\nshape = \"point\"\nmass = \"0.5 kg\"\nout = \"0.4 m\"\n[tolerances]\nfriction = \"20 %\"\n")));
        string written = Written(laid);
        Assert.True(written.IndexOf("name = \"finder\"", StringComparison.Ordinal) < written.IndexOf("[counterweight]", StringComparison.Ordinal));
        Assert.Equal(Values(laid), Values(Read(written, LaidOver.Nothing)));
    }

    private const string Rest = "format = 1\nname = \"short\"\n[site]\nlatitude = \"54 deg\"\n";

    private static readonly string Rest2 = string.Concat(File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml")).Split("\n[").Skip(1).Where(section => !section.StartsWith("site]", StringComparison.Ordinal) && !section.StartsWith("polar.motion]", StringComparison.Ordinal)).Select(section => "[" + section + "\n"));

    private static string Written(Scenario scenario)
    {
        string? text = ScenarioText.Whole(scenario, NoNotes, out Problem? problem);
        Assert.True(text is not null, problem?.ToString());
        return text;
    }

    private static string Values(Scenario scenario) => OutcomeJson.ToText("scenario", ("scenario", scenario with { Sha256 = "" }));

    private static Scenario Read(string text, LaidOver laid)
    {
        ScenarioResult result = ScenarioReader.ReadText(text, "m.toml", laid);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems) + "\n" + text);
        return result.Scenario;
    }
}
