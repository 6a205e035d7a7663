using AxisSim.Files.Motors;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Figures that are good one by one and are not once they are converted or put together.</summary>
public sealed class SetupNetTests
{
    [Fact]
    public void Figures_of_a_half_coil_must_be_good_as_wired()
    {
        // In series the inductance is four times that of a half coil: 0.3 H makes 1.2 H, above 1 H.
        Problem problem = Error("nominal", "polar.motor.figures_for=half-coil", "polar.motor.wiring=bipolar-series", "polar.motor.inductance=0.3 H");
        Assert.EndsWith(": polar.motor: found figures that make inductance 1.2; allowed: above 0 H and up to 1 H; write: figures of this section that go together", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Bodies_without_an_inertia_about_an_axis_are_told()
    {
        const string Point = "[[payload]]\nname = \"camera\"\nshape = \"point\"\nmass = \"2 kg\"\nout = \"0.3 m\"\n\n[move]";
        string text = File.ReadAllText(Repository.PathOf("scenarios", "light-refractor.toml"));
        string bare = text[..text.IndexOf("[[payload]]", StringComparison.Ordinal)] + Point + text[(text.IndexOf("[move]", StringComparison.Ordinal) + "[move]".Length)..];
        Problem problem = Assert.Single(ScenarioReader.ReadText(bare, "bare.toml", []).Problems, one => one.Severity == ProblemSeverity.Error);
        Assert.Contains("payload: found figures that make declination inertia 0 kg m2 about the declination axis", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_motor_of_a_table_must_be_good_as_wired()
    {
        const string Table = "name,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_mh,rotor_inertia_g_cm2,wiring\nlong,200,0.44,1.5,1.5,300,60,bipolar-series\n";
        MotorTableResult result = MotorTable.ReadText(Table, "motors.csv");
        Assert.Empty(result.Motors);
        Assert.Equal("motors.csv:2: wiring: found figures that make inductance 1.2 as the motor is wired; allowed: above 0 H and up to 1 H", Assert.Single(result.Problems).ToString());
    }

    private static Problem Error(string scenario, params string[] settings)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Repository.PathOf("scenarios", scenario + ".toml"), settings);
        Assert.Null(result.Scenario);
        return Assert.Single(result.Problems, problem => problem.Severity == ProblemSeverity.Error);
    }
}
