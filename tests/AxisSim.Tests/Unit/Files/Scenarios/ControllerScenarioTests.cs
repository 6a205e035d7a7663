using AxisSim.Core.Controllers;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>A user's own controller in a scenario: what is read, and one slip at a time, refused with line, key, what was found and what to write.</summary>
public sealed class ControllerScenarioTests
{
    private const string Controller = """

        [controller]
        name = "box on the pier"

        [[controller.settings]]
        name = "ramp"
        sets = "ramp_time"
        unit = "0.25 s"
        least = 1
        greatest = 9

        [[controller.settings]]
        name = "max"
        sets = "slew_rate"
        unit = "100 pulses/s"

        [[controller.settings]]
        name = "run"
        sets = "slew_current"
        unit = "31.25 mA"
        zero = "31.25 mA"
        greatest = 31

        [[controller.settings]]
        name = "hold"
        sets = "holding_share"
        axis = "polar"
        unit = "5 %"

        """;

    private static readonly string s_plain = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")).ReplaceLineEndings("\n");

    private static readonly string s_good = s_plain + Controller.ReplaceLineEndings("\n");

    public static TheoryData<string, string, string, string> Slips => new()
    {
        { "unit = \"0.25 s\"", "unit = \"0.25 kg\"", "controller.settings.ramp.unit", "found \"0.25 kg\" (kg is a unit of mass)|units: s, ms|write: for example unit = \"0.25 s\"" },
        { "unit = \"0.25 s\"", "unit = 0.25", "controller.settings.ramp.unit", "a number without its unit|write: unit = \"0.25 s\"" },
        { "unit = \"0.25 s\"", "unit = \"0 s\"", "controller.settings.ramp.unit", "one counts nothing|not zero" },
        { "unit = \"0.25 s\"", "unit = \"-0.25 s\"", "controller.settings.ramp.unit", "every number that it takes stands for nothing or less" },
        { "unit = \"0.25 s\"\n", "", "controller.settings.ramp.unit", "nothing (this key is required)" },
        { "unit = \"100 pulses/s\"", "unit = \"100 pulse/s\"", "controller.settings.max.unit", "not known here|pulses/s" },
        { "zero = \"31.25 mA\"", "zero = \"31.25\"", "controller.settings.run.zero", "a number without its unit|zero = " },
        { "sets = \"ramp_time\"", "sets = \"ramp\"", "controller.settings.ramp.sets", "none of the words allowed|\"ramp_time\" or \"acceleration\"" },
        { "sets = \"ramp_time\"", "sets = \"slew_rate\"\nzero = \"1 deg/s\"", "controller.settings.ramp.unit", "s is a unit of time" },
        { "sets = \"holding_share\"", "sets = \"slew_rate\"", "controller.settings.hold.unit", "% is a unit of share" },
        { "greatest = 9", "greatest = 0", "controller.settings.ramp.greatest", "found 0 (below the least number of 1)|at least 1|write: greatest = 10" },
        { "least = 1", "leest = 1", "controller.settings.ramp.leest", "did you mean controller.settings.ramp.least?" },
        { "[[controller.settings]]\nname = \"ramp\"", "[controller.settings]\nname = \"ramp\"", "controller.settings", "a single section [controller.settings]|[[controller.settings]]" },
        { "name = \"max\"", "name = \"ramp\"", "controller.settings.ramp", "a second item of this name" },
        { "axis = \"polar\"", "axis = \"ra\"", "controller.settings.hold.axis", "none of the words allowed|\"both\" or \"polar\" or \"declination\"" },
        { "sets = \"holding_share\"", "sets = \"slew_current\"", "controller.settings.hold.unit", "% is a unit of share" },
        { "name = \"max\"\nsets = \"slew_rate\"\nunit = \"100 pulses/s\"", "name = \"max\"\nsets = \"acceleration\"\nunit = \"0.1 deg/s^2\"", "controller.settings.max.sets", "besides the setting \"ramp\"|ramp_time or acceleration or ramp_distance once for each axis" },
    };

    [Fact]
    public void A_controller_is_read_for_both_axes()
    {
        Scenario scenario = Read(s_good);
        Assert.Equal("box on the pier", scenario.Controller!.Name);
        Assert.Equal(["ramp", "max", "run", "hold"], scenario.Controller.Polar.Select(scale => scale.Name));
        Assert.Equal(["ramp", "max", "run"], scenario.Controller.Declination.Select(scale => scale.Name));
        ControllerScale ramp = scenario.Controller.Polar[0], max = scenario.Controller.Polar[1], run = scenario.Controller.Polar[2];
        Assert.Equal((ControllerQuantity.RampTime, 0.25, 0.25, "s", 1.0, 9.0, 1.0), (ramp.Quantity, ramp.Unit, ramp.UnitNumber, ramp.UnitName, ramp.Least, ramp.Greatest, ramp.Step));

        // 100 pulses/s of 5529600 an axis turn: 100/15360 deg/s.
        Assert.Equal(100.0 / 15360.0 * Math.PI / 180.0, max.Unit, 1e-15);
        Assert.Equal((0.03125, 0.03125, "31.25 mA"), (run.Unit, run.Zero, run.ZeroText));
        Assert.True(double.IsPositiveInfinity(max.Greatest));
    }

    [Theory]
    [InlineData("slew_rate", "10 rpm", 10.0 * 6.0 / 216.0)]
    [InlineData("slew_rate", "400 steps/s", 400.0 / 240.0)] // 400 x 216 / 360 = 240 full steps a degree
    [InlineData("slew_rate", "0.5 deg/s", 0.5)]
    [InlineData("slew_rate", "100 x sidereal", 100.0 * 15.0410686403 / 3600.0)]
    [InlineData("changeover", "1 deg/s", 216.0)] // at the motor, as the model has it
    [InlineData("changeover", "10 rpm", 60.0)]
    public void A_unit_at_either_shaft_is_carried_over(string sets, string unit, double degreesPerSecond)
    {
        string text = s_plain + $"\n[[controller.settings]]\nname = \"x\"\nsets = \"{sets}\"\nunit = \"{unit}\"\n";
        Assert.Equal(degreesPerSecond * Math.PI / 180.0, Assert.Single(Read(text).Controller!.Polar).Unit, 1e-12);
    }

    [Fact]
    public void Without_a_controller_there_is_none() => Assert.Null(Read(s_plain).Controller);

    [Fact]
    public void A_setting_reaches_into_a_controller()
    {
        ScenarioResult result = ScenarioReader.ReadText(s_good, "mount.toml", ["controller.settings.ramp.unit=0.5 s"]);
        Assert.Equal(0.5, result.Scenario!.Controller!.Polar[0].Unit);
        result = ScenarioReader.ReadText(s_good, "mount.toml", ["controller.settings.ramp.unit=0.5 m"]);
        Assert.StartsWith("--set:1: controller.settings.ramp.unit: found \"0.5 m\"", Assert.Single(result.Problems, problem => problem.Severity == ProblemSeverity.Error).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_is_refused_where_it_stands(string good, string bad, string key, string parts)
    {
        int at = s_good.IndexOf(good, s_plain.Length, StringComparison.Ordinal);
        Assert.True(at > 0, good);
        string text = s_good[..at] + bad + s_good[(at + good.Length)..];
        ScenarioResult result = ScenarioReader.ReadText(text, "mount.toml", []);
        Assert.Null(result.Scenario);
        Problem problem = result.Problems.First(one => one.Severity == ProblemSeverity.Error && one.Key == key);
        Assert.InRange(problem.Line, s_plain.Count(letter => letter == '\n'), text.Count(letter => letter == '\n') + 1);
        foreach (string part in parts.Split('|'))
        {
            Assert.Contains(part, problem.ToString(), StringComparison.Ordinal);
        }
    }

    private static Scenario Read(string text)
    {
        ScenarioResult result = ScenarioReader.ReadText(text, "mount.toml", []);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario;
    }
}
