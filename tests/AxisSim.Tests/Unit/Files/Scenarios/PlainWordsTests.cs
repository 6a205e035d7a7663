using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>What a person is likely to type is met with what to write instead, and what is written instead is taken.</summary>
public sealed class PlainWordsTests
{
    private static readonly string Heavy = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml"));

    [Fact]
    public void Axes_by_their_other_names_are_told_header_by_header_and_nothing_else_is_told_for_it()
    {
        string text = Heavy.Replace("[polar", "[ra", StringComparison.Ordinal).Replace("[declination", "[Dec", StringComparison.Ordinal);
        string[] told = [.. ScenarioReader.ReadText(text, "m.toml", []).Problems.Select(problem => problem.ToString())];
        int headers = text.Split('\n').Count(line => line.StartsWith("[ra", StringComparison.Ordinal) || line.StartsWith("[[ra", StringComparison.Ordinal) || line.StartsWith("[Dec", StringComparison.Ordinal));
        Assert.Equal(headers, told.Length);
        Assert.Contains(told, line => line.Contains("ra.motor: found ra, the axis that is called polar here", StringComparison.Ordinal) && line.EndsWith("write: [polar.motor]", StringComparison.Ordinal));
        Assert.Contains(told, line => line.EndsWith("write: [[polar.stages]]", StringComparison.Ordinal));
        Assert.Contains(told, line => line.Contains("found Dec, the axis that is called declination here", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("ra.motion.slew_rate=3 deg/s", "write: --set polar.motion.slew_rate=\"3 deg/s\"")]
    [InlineData("dec.drive.slew_current=0.8 A", "write: --set declination.drive.slew_current=\"0.8 A\"")]
    [InlineData("polar.motor.holding_torque=58 oz.in", "write: --set polar.motor.holding_torque=\"58 ozf*in\"")]
    [InlineData("polar.motor.holding_torque=58 oz-in", "write: --set polar.motor.holding_torque=\"58 ozf*in\"")]
    [InlineData("polar.motor.holding_torque=4.2 kg.cm", "write: --set polar.motor.holding_torque=\"4.2 kgf*cm\"")]
    [InlineData("polar.motor.holding_torque=0.4 N.m", "write: --set polar.motor.holding_torque=\"0.4 N*m\"")]
    [InlineData("polar.motor.rotor_inertia=38 g-cm2", "write: --set polar.motor.rotor_inertia=\"38 g*cm^2\"")]
    [InlineData("polar.motor.rotor_inertia=38 g.cm^2", "write: --set polar.motor.rotor_inertia=\"38 g*cm^2\"")]
    [InlineData("counterweight.distance=0.7 m", "write: --set counterweight.distance=\"0.55 m\" (17.82 kg there weighs as much about the axis as 14 kg at 0.7 m)")]
    public void A_word_is_met_with_the_one_to_write(string setting, string write)
    {
        string told = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", [setting]).Problems).ToString();
        Assert.EndsWith(write, told, StringComparison.Ordinal);

        string instead = write[(write.IndexOf("--set ", StringComparison.Ordinal) + 6)..].Split(" (")[0];
        Assert.NotNull(ScenarioReader.ReadText(Heavy, "m.toml", [instead]).Scenario);
    }

    [Theory]
    [InlineData("move.start_ra=5 h", "right ascension", "hour_angle = \"-2 h\" under [move.start]")]
    [InlineData("move.end.ra=5 h", "sidereal time less right ascension", "hour_angle = \"-2 h\" under [move.end]")]
    [InlineData("move.end_dec=20 deg", "did you mean move.end.declination?", "declination = \"35 deg\" under [move.end]")]
    public void Places_on_the_sky_are_told_by_their_keys(string setting, string holds, string write)
    {
        string told = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", [setting]).Problems).ToString();
        Assert.Contains(holds, told, StringComparison.Ordinal);
        Assert.EndsWith(write, told, StringComparison.Ordinal);
    }

    /// <summary>Paper: 100 kHz over 64 microsteps are 1562.5 full steps/s, x 0.9 deg / 216 = 6.510 deg/s; 9 deg/s ask for 2160 full steps/s, so 46, of which 32 is a power of two.</summary>
    [Fact]
    public void A_rate_past_the_pulse_limit_is_told_the_rate_and_the_microsteps_that_pass()
    {
        string told = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.slew_rate=9 deg/s"]).Problems).ToString();
        Assert.Contains("allowed: at most 6.51 deg/s with 64 microsteps, or 32 microsteps at this slew rate", told, StringComparison.Ordinal);
        Assert.NotNull(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.slew_rate=6.51 deg/s"]).Scenario);
        Assert.Null(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.slew_rate=6.52 deg/s"]).Scenario);
        Assert.NotNull(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.slew_rate=9 deg/s", "polar.drive.microsteps=32"]).Scenario);
        Assert.Null(ScenarioReader.ReadText(Heavy, "m.toml", ["polar.motion.slew_rate=9 deg/s", "polar.drive.microsteps=64"]).Scenario);
    }

    [Theory]
    [InlineData(0.37)]
    [InlineData(4.71)]
    [InlineData(13.9)]
    public void The_rate_told_passes_at_every_limit(double kilohertz)
    {
        string limit = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"polar.drive.max_pulse_rate={kilohertz} kHz");
        string told = ScenarioReader.ReadText(Heavy, "m.toml", [limit]).Problems[0].ToString();
        string rate = told[(told.IndexOf("at most ", StringComparison.Ordinal) + 8)..].Split(" deg/s")[0];
        ScenarioResult again = ScenarioReader.ReadText(Heavy, "m.toml", [limit, $"polar.motion.slew_rate={rate} deg/s", $"declination.motion.slew_rate={rate} deg/s", "polar.motion.start_rate=0 deg/s"]);
        Assert.DoesNotContain(again.Problems, problem => problem.Found.Contains("pulses/s", StringComparison.Ordinal));
    }

    /// <summary>Paper: at latitude 54.4 deg, declination 10 deg: cos H = -tan 54.4 tan 10 = -0.2463, so up to 104.3 deg or 6.95 h from the meridian.</summary>
    [Fact]
    public void A_pose_below_the_horizon_is_noted_with_the_hours_that_are_up()
    {
        ScenarioResult result = ScenarioReader.ReadText(Heavy, "m.toml", ["move.start_polar=-170 deg"]);
        Assert.NotNull(result.Scenario);
        Problem note = Assert.Single(result.Problems);
        Assert.Equal(ProblemSeverity.Note, note.Severity);
        Assert.StartsWith("the telescope points ", note.Found, StringComparison.Ordinal);
        Assert.Contains("below the horizon at the start of the move; at a declination of 10.0 deg the sky is up to 7.0 h either side of the meridian", note.Found, StringComparison.Ordinal);
        Assert.Empty(ScenarioReader.ReadText(Heavy, "m.toml", []).Problems);
    }

    [Theory]
    [InlineData("20/30", "step up of 0.6667", "write 30/20")]
    [InlineData("0.5", "step up of 0.5", "write 2")]
    public void A_step_up_is_noted_with_the_ratio_that_reduces(string ratio, string holds, string write)
    {
        Problem note = Assert.Single(ScenarioReader.ReadText(Heavy, "m.toml", [$"polar.stages.belt.ratio={ratio}"]).Problems);
        Assert.Equal(ProblemSeverity.Note, note.Severity);
        Assert.Contains(holds, note.Found, StringComparison.Ordinal);
        Assert.EndsWith(write, note.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_counterweight_past_its_bar_is_noted_where_only_the_bar_is_known()
    {
        string text = string.Join('\n', Heavy.Split('\n').Where(line => !line.StartsWith("greatest_distance", StringComparison.Ordinal)));
        Assert.Contains("past the end of its bar of \"0.60 m\"", Assert.Single(ScenarioReader.ReadText(text, "m.toml", ["counterweight.distance=0.7 m"]).Problems).Found, StringComparison.Ordinal);
    }
}
