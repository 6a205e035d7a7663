using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>One slip at a time in a good scenario: exactly one problem, at the right line and key, that says what to do.</summary>
public sealed class DiagnosticTests
{
    private static readonly string Good = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")).ReplaceLineEndings("\n");

    // What stands in the good file (its first place counts), what is put there, the key, and what the message must hold.
    public static TheoryData<string, string, string, string> Slips => new()
    {
        { "\"1.0 A\"", "\"1,0 A\"", "polar.motor.rated_current", "a comma is not a decimal point|write: rated_current = \"1.0 A\"" },
        { "\"1.0 A\"", "1.0", "polar.motor.rated_current", "found 1.0 (a number without its unit)|write: rated_current = \"1.0 A\"" },
        { "\"1.0 A\"", "\"1.0\"", "polar.motor.rated_current", "a number without its unit|write: rated_current = \"1.0 A\"" },
        { "\"0.26 N*m\"", "\"0.26 kg\"", "polar.motor.holding_torque", "kg is a unit of mass|units: N*m" },
        { "\"0.26 N*m\"", "true", "polar.motor.holding_torque", "not a value with a unit" },
        { "\"0.26 N*m\"", "[\"0.26 N*m\"]", "polar.motor.holding_torque", "not a value with a unit" },
        { "\"0.26 N*m\"", "{ torque = \"0.26 N*m\" }", "polar.motor.holding_torque", "not a value with a unit" },
        { "\"0.26 N*m\"", "\"NaN N*m\"", "polar.motor.holding_torque", "not a finite number" },
        { "\"0.26 N*m\"", "\"2600 N*m\"", "polar.motor.holding_torque", "above 0 N*m and up to 200 N*m" },
        { "\"38 g*cm^2\"", "\"0 g*cm^2\"", "polar.motor.rotor_inertia", "above 0 g*cm^2" },
        { "\"30/20\"", "-1.5", "polar.stages.belt.ratio", "found -1.5 (out of bounds)|a ratio above 0" },
        { "\"30/20\"", "\"30/0\"", "polar.stages.belt.ratio", "not a ratio" },
        { "mass = \"10 kg\"", "mass = \"-10 kg\"", "payload.tube.mass", "found \"-10 kg\" (out of bounds)|above 0 kg" },
        { "steps_per_revolution = 400", "steps_per_revolution = 402", "polar.motor.steps_per_revolution", "not a multiple of 4" },
        { "steps_per_revolution = 400", "steps_per_revolution = 400.5", "polar.motor.steps_per_revolution", "not a whole number" },
        { "rated_current =", "rated_curent =", "polar.motor.rated_curent", "did you mean polar.motor.rated_current?" },
        { "[polar.motor]", "[polar.moter]", "polar.moter", "did you mean polar.motor?" },
        { "current_fall_delay =", "holding_torqe =", "polar.drive.holding_torqe", "a key that does not exist (did you mean polar.drive.holding_current?)" },
        { "latitude = \"54.4 deg\"", "", "site.latitude", "nothing (this key is required)|write: for example latitude = \"54.4 deg\"" },
        { "ramp_time = \"1.5 s\"", "", "polar.motion.ramp_time", "the ramp needs ramp_time or acceleration" },
        { "ramp_time = \"1.5 s\"", "ramp_time = \"1.5 s\"\nacceleration = \"2 deg/s^2\"", "polar.motion.acceleration", "besides ramp_time" },
        { "breakaway = \"1.2 N*m\"", "breakaway = \"1.1 N*m\"", "polar.axis.breakaway", "below the running friction|at least the running friction of 1.2 N*m" },
        { "microsteps = 64", "microsteps = 256", "polar.drive.microsteps", "720 full steps/s x 256 = 184320 pulses/s, above max_pulse_rate of 100000|at most 138 microsteps|write: microsteps = 128" },
        { "slew_current = \"0.9 A\"", "slew_current = \"2.1 A\"", "polar.drive.slew_current", "2.1 times the rated current" },
        { "[polar.clutch]\nslip_torque = \"45 N*m\"", "[polar.axis]", "polar.axis", "a second time" },
        { "name = \"mirror\"", "name = \"tube\"", "payload.tube", "a second item of this name" },
        { "name = \"mirror\"", "", "payload", "an item without a name" },
        { "inner_diameter = \"0.31 m\"", "inner_diameter = \"0.33 m\"", "payload.tube.inner_diameter", "not below the outer diameter" },
        { "diameter = \"0.32 m\"", "", "payload.tube.diameter", "a tube needs it" },
        { "greatest_distance = \"0.55 m\"", "greatest_distance = \"0.35 m\"", "counterweight.greatest_distance", "below the distance \"0.378 m\"" },
        { "damping = \"3e-4 N*m*s/rad\"", "damping = \"3e-4 N*m*s/rad\"\ndamping_share = 0.05", "polar.drive.damping_share", "besides damping" },
        { "friction = 0.08 ", "friction = 0.08\nefficiency = 0.4 ", "polar.worm.efficiency", "besides lead_angle or friction" },
        { "lead_angle = \"3.5 deg\"", "lead_angle = \"0.1 deg\"", "polar.worm.friction", "2.01 % only|a driving efficiency of 5 % or more" },
        { "lead_angle = \"3.5 deg\"", "", "polar.worm.lead_angle", "friction needs the lead angle too" },
        { "start_polar = \"-5 deg\"", "", "move.start_polar", "the move needs it" },
        { "start_polar = \"-5 deg\"", "start_polar = \"-5 deg\"\nstart = { hour_angle = \"1 h\", declination = \"0 deg\", pier_side = \"east\" }", "move.start_polar", "besides a place on the sky" },
        { "ambient = ", "wind = \"5 m/s\"\narea = \"0.1 m^2\"\nambient = ", "disturbances.lever", "wind needs its lever" },
        { "follow = \"sidereal\"", "follow = \"siderial\"", "move.follow", "write: follow = \"sidereal\"" },
        { "format = 1", "format = 2", "format", "allowed: 1, the only one so far" },
        { "format = 1", "format = \"1\"", "format", "a number in quotes|write: format = 1" },
        { "like = \"polar\"", "like = \"polar\"\n[declination.load]\ninertia = \"1 kg*m^2\"\nimbalance = \"0 N*m\"", "declination.load", "besides [[payload]]" },
        { "slew_rate = \"3 deg/s\"", "slew_rate = \"3 rpm\"", "polar.motion.slew_rate", "x sidereal" },
        { "shape = \"s-curve\"", "shape = \"s-curve\"\nstart_rate = \"1e4 steps/s\"", "polar.motion.start_rate", "above the slew rate" },
        { "max_pulse_rate", "brake_limit = \"12 V\"\nmax_pulse_rate", "polar.drive.brake_limit", "not above the supply voltage" },
        { "\"1000 uF\"", "\"1e-300 uF\"", "polar.drive.bus_capacitance", "found \"1e-300 uF\" (out of bounds)|from 1 uF to 1000000 uF" },
        { "slew_rate = \"3 deg/s\"", "slew_rate = \"1e-300 deg/s\"", "polar.motion.slew_rate", "takes more than a hundred years|a planned move may take up to 24 h|write: slew_rate = \"0.000" },
        { "ramp_time = \"1.5 s\"", "acceleration = \"1e-300 deg/s^2\"", "polar.motion.acceleration", "takes more than a hundred years|at least |up to 24 h" },
        { "\"30/20\"", "\"1/2000\"", "polar.stages.belt.ratio", "with which the stage and the worm make a total reduction of 0.072|allowed: a total reduction from 0.1" },
        { "detent_torque = ", "figures_for = \"half-coil\"\ndetent_torque = ", "polar.motor.wiring", "figures for a half coil need the wiring" },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_gives_one_message_that_says_where_and_how(string good, string bad, string key, string holds)
    {
        int at = Good.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0, $"the scenario no longer holds {good}");
        ScenarioResult result = ScenarioReader.ReadText(Good[..at] + bad + Good[(at + good.Length)..], "mount.toml", []);
        Assert.Null(result.Scenario);
        Problem problem = Assert.Single(result.Problems);
        Assert.Equal(key, problem.Key);
        foreach (string part in holds.Split('|'))
        {
            Assert.Contains(part, problem.ToString(), StringComparison.Ordinal);
        }

        Assert.StartsWith("mount.toml", problem.ToString(), StringComparison.Ordinal);
        if (problem.Line > 0 && bad.Length > 0 && !problem.Found.StartsWith("nothing", StringComparison.Ordinal))
        {
            int first = Good[..at].Count(c => c == '\n') + 1;
            Assert.InRange(problem.Line, Math.Max(1, first - 2), first + bad.Count(c => c == '\n') + 1);
        }
    }

    [Fact]
    public void The_line_and_column_are_those_of_the_key()
    {
        Problem problem = Assert.Single(ScenarioReader.ReadText(Good.Replace("\"1.0 A\"", "\"1,0 A\"", StringComparison.Ordinal), "m.toml", []).Problems);
        string[] lines = Good.Split('\n');
        Assert.Equal(Array.FindIndex(lines, line => line.StartsWith("rated_current", StringComparison.Ordinal)) + 1, problem.Line);
        Assert.Equal(1, problem.Column);
    }

    [Fact]
    public void A_current_a_little_above_the_rated_is_a_note_and_no_error()
    {
        ScenarioResult result = ScenarioReader.ReadText(Good, "m.toml", ["polar.drive.slew_current=1.2 A", "declination.drive.slew_current=0.9 A"]);
        Assert.NotNull(result.Scenario);
        Problem note = Assert.Single(result.Problems);
        Assert.Equal((ProblemSeverity.Note, "polar.drive.slew_current"), (note.Severity, note.Key));
        Assert.Contains("1.44 times the rated loss", note.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_section_is_told_once()
    {
        int from = Good.IndexOf("[polar.worm]", StringComparison.Ordinal), to = Good.IndexOf("[polar.axis]", StringComparison.Ordinal);
        Problem problem = Assert.Single(ScenarioReader.ReadText(Good[..from] + Good[to..], "m.toml", []).Problems, problem => !problem.Key.StartsWith("declination", StringComparison.Ordinal));
        Assert.Equal("polar.worm.teeth", problem.Key);
        from = Good.IndexOf("[polar.motor]", StringComparison.Ordinal);
        to = Good.IndexOf("[polar.drive]", StringComparison.Ordinal);
        problem = ScenarioReader.ReadText(Good[..from] + Good[to..], "m.toml", []).Problems.First(problem => problem.Key == "polar.motor");
        Assert.Contains("no section [polar.motor]", problem.ToString(), StringComparison.Ordinal);
        Assert.Contains("holding_torque = \"0.44 N*m\"", problem.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_of_a_file_come_at_once()
    {
        string bad = Good.Replace("\"1.0 A\"", "\"1,0 A\"", StringComparison.Ordinal).Replace("steps_per_revolution = 400", "steps_per_revolution = 401", StringComparison.Ordinal)
            .Replace("latitude =", "lattitude =", StringComparison.Ordinal).Replace("[settling]", "[setling]", StringComparison.Ordinal);
        IReadOnlyList<Problem> problems = ScenarioReader.ReadText(bad, "m.toml", []).Problems;
        Assert.Equal(["site.lattitude", "polar.motor.rated_current", "polar.motor.steps_per_revolution", "setling"], problems.Select(problem => problem.Key));
    }
}
