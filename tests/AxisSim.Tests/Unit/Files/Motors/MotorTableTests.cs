using AxisSim.Core.Comparisons;
using AxisSim.Core.Motors;
using AxisSim.Files.Motors;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.Unit.Files.Motors;

/// <summary>Tables of motors and measured curves: what is read, and what is said of what is wrong.</summary>
public sealed class MotorTableTests
{
    private const string Head = "name,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_mh,rotor_inertia_g_cm2";
    private const string Good = "a,200,0.44,1.5,1.5,3,60";

    public static TheoryData<string> CultureNames => Cultures.Names;

    [Theory]
    [MemberData(nameof(CultureNames))]
    public void The_shipped_catalogue_is_read_whole_under_any_culture(string culture)
    {
        MotorTableResult result = Cultures.Under(culture, () => MotorTable.ReadFile(Repository.PathOf("catalogues", "motors.csv")));
        Assert.Empty(result.Problems);
        Assert.InRange(result.Motors.Count, 12, 20);
        MotorChoice motor = result.Motors.Single(one => one.Name == "17 long, 0.9 deg");
        Assert.Equal((400, 0.44, 1.7, "17"), (motor.Motor.StepsPerRevolution, motor.Motor.HoldingTorqueNewtonMetres, motor.Motor.RatedCurrentAmperes, motor.Frame));
        Assert.Equal(4.2e-3, motor.Motor.InductanceHenries, 1e-15);
        Assert.Equal(72e-7, motor.Motor.RotorInertiaKilogramSquareMetres, 1e-18);
        Assert.Equal(16e-3, motor.Motor.DetentTorqueNewtonMetres, 1e-15);
    }

    [Fact]
    public void Empty_fields_take_their_defaults()
    {
        StepperMotor motor = Assert.Single(Read($"{Head},detent_torque_mn_m,thermal_resistance_k_per_w,thermal_time_min,insulation_class,wiring\n{Good},,,,,\n").Motors).Motor;
        Assert.Equal(0.04 * 0.44, motor.DetentTorqueNewtonMetres, 1e-15);
        Assert.Equal((null, 1500.0, InsulationClass.B, 0.0, 0.0), (motor.GivenThermalResistanceKelvinPerWatt, motor.ThermalTimeConstantSeconds, motor.Insulation, motor.ViscousNewtonMetreSecondsPerRadian, motor.CoulombTorqueNewtonMetres));
        Assert.Equal(motor, Assert.Single(Read($"{Head}\n{Good}\n").Motors).Motor);
    }

    [Fact]
    public void Units_stand_in_the_columns_names_and_case_and_order_are_free()
    {
        string text = "Rotor_Inertia_kg_m2,NAME,holding_torque_N_cm,rated_current_ma,resistance_mohm,inductance_uh,steps_per_revolution,thermal_time_s,insulation_class\n6e-6,a,44,1500,1500,3000,200,900,f\n";
        StepperMotor motor = Assert.Single(Read(text).Motors).Motor, usual = Assert.Single(Read($"{Head}\n{Good}\n").Motors).Motor;
        Assert.Equal(usual with { ThermalTimeConstantSeconds = 900.0, Insulation = InsulationClass.F }, motor with { DetentTorqueNewtonMetres = usual.DetentTorqueNewtonMetres, RotorInertiaKilogramSquareMetres = 60e-7, HoldingTorqueNewtonMetres = 0.44, InductanceHenries = usual.InductanceHenries });
        Assert.Equal(0.44, motor.HoldingTorqueNewtonMetres, 1e-12);
        Assert.Equal(6e-6, motor.RotorInertiaKilogramSquareMetres, 1e-18);
    }

    [Fact]
    public void Half_coil_figures_are_converted_to_the_wiring()
    {
        StepperMotor plain = Read($"{Head}\n{Good}\n").Motors[0].Motor;
        IReadOnlyList<MotorChoice> wired = Read($"{Head},wiring\n{Good},bipolar-series\nb{Good[1..]},bipolar-parallel\nc{Good[1..]},half-coil\nd{Good[1..]},as-wired\n").Motors;
        Assert.Equal([MotorDatasheet.Wire(plain, MotorWiring.BipolarSeries), MotorDatasheet.Wire(plain, MotorWiring.BipolarParallel), plain, plain], wired.Select(motor => motor.Motor));
    }

    [Theory]
    [InlineData("no such file", null)]
    [InlineData("no line of column names", "# only a comment\n")]
    [InlineData("no row below them", Head + "\n")]
    [InlineData("semicolons between the fields", "name;holding_torque_n_m\na;0,4\n")]
    [InlineData("tabs between the fields", "name\tholding_torque_n_m\na\t0.4\n")]
    [InlineData("t.csv:2: found 8 fields where there are 7 columns; a comma parts two fields and is not a decimal point", Head + "\na,200,0,44,1.5,1.5,3,60\n")]
    [InlineData("t.csv:2: found 6 fields where there are 7 columns; a field that is left out still needs its comma", Head + "\na,200,0.44,1.5,1.5,3\n")]
    [InlineData("holding_torque_n_m: found \"0,44\" (a comma is not a decimal point); allowed: a number above 0 N*m and up to 200 N*m; write: 0.44", Head + "\na,200,\"0,44\",1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found \"0.44 Nm\" (more than a number; the unit stands in the column's name)", Head + "\na,200,0.44 Nm,1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found \"much\" (that is not a number)", Head + "\na,200,much,1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found \"nan\" (that is not a finite number)", Head + "\na,200,nan,1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found -0.44; allowed: a number above 0 N*m", Head + "\na,200,-0.44,1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found 440; allowed", Head + "\na,200,440,1.5,1.5,3,60\n")]
    [InlineData("holding_torque_n_m: found nothing", Head + "\na,200,,1.5,1.5,3,60\n")]
    [InlineData("steps_per_revolution: found 201; allowed: a whole number from 8 to 4000, a multiple of 4", Head + "\na,201,0.44,1.5,1.5,3,60\n")]
    [InlineData("name: found nothing", Head + "\n,200,0.44,1.5,1.5,3,60\n")]
    [InlineData("t.csv:4: name: found \"A\" again, as in line 3", "# c\n" + Head + "\n" + Good + "\nA,200,0.44,1.5,1.5,3,60\n")]
    [InlineData("inductance_mh: found no such column; allowed: inductance per phase", "name,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,rotor_inertia_g_cm2\na,200,0.44,1.5,1.5,60\n")]
    [InlineData("inductance: found a quantity without its unit in the column's name; allowed: inductance_mh, inductance_h, inductance_uh; write: inductance_mh", "name,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance,rotor_inertia_g_cm2\na,200,0.44,1.5,1.5,3,60\n")]
    [InlineData("inductance_kg: found a unit that is not known here", "name,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_kg,rotor_inertia_g_cm2\na,200,0.44,1.5,1.5,3,60\n")]
    [InlineData("colour: found a column that is not known", Head + ",colour\n" + Good + ",red\n")]
    [InlineData("rotor_inertia_kg_m2: found the same figure in two columns, rotor_inertia_g_cm2 and rotor_inertia_kg_m2", Head + ",rotor_inertia_kg_m2\n" + Good + ",6e-6\n")]
    [InlineData("insulation_class: found \"X\"; allowed: A or E or B or F or H or N", Head + ",insulation_class\n" + Good + ",X\n")]
    [InlineData("wiring: found \"series\"; allowed: as-wired or bipolar-series", Head + ",wiring\n" + Good + ",series\n")]
    [InlineData("a name of 61 characters", Head + "\nxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx,200,0.44,1.5,1.5,3,60\n")]
    public void What_is_wrong_is_told_with_line_column_and_cure(string message, string? text)
    {
        foreach (string culture in new[] { "", "de-DE", "tr-TR" })
        {
            MotorTableResult result = Cultures.Under(culture, () => text is null ? MotorTable.ReadFile("no-such.csv") : Read(text));
            Assert.Empty(result.Motors);
            Assert.Contains(result.Problems, problem => problem.ToString().Contains(message, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void All_problems_are_told_at_once_by_line()
    {
        MotorTableResult result = Read($"{Head},colour\na,200,x,1.5,-1,3,60,\nb,199,0.4,1.5,1,3,60,\nb,200,0.4,1.5,1,3,60,\n");
        Assert.Equal([(1, 8), (2, 3), (2, 5), (3, 2), (4, 0)], result.Problems.Select(problem => (problem.Line, problem.Column)));
        Assert.All(result.Problems, problem => Assert.Equal(ProblemSeverity.Error, problem.Severity));
    }

    [Theory]
    [InlineData("\"")]
    [InlineData("name\n\"a")]
    [InlineData(",,,\n,,,")]
    [InlineData("name,name\na,b")]
    [InlineData("\0\0,\n1,2")]
    [InlineData("#\n\n\n")]
    [InlineData("name,holding_torque_n_m\na,1e999")]
    public void Nonsense_is_told_and_never_thrown(string text) => Assert.NotEmpty(Read(text).Problems);

    [Fact]
    public void A_measured_curve_has_its_conditions_or_those_of_the_scenario()
    {
        StepperMotor motor = Read($"{Head}\n{Good}\n").Motors[0].Motor;
        MeasuredTableResult result = MeasuredTable.ReadText("speed_rpm,torque_mn_m,supply_voltage_v,phase_current_a,mode\n60,300,24,1.2,full-step\n600,100,,,\n", "c.csv", motor, 12.0);
        Assert.Empty(result.Problems);
        Assert.Equal([new(2.0 * Math.PI, 0.3, 24.0, 1.2, true), new(20.0 * Math.PI, 0.1, 12.0, 1.5, false)], result.Points.Select(point => point with { SpeedRadiansPerSecond = Math.Round(point.SpeedRadiansPerSecond / Math.PI, 12) * Math.PI }));

        // 200 full steps a second are 1 rev/s.
        MeasuredPoint steps = Assert.Single(MeasuredTable.ReadText("speed_steps_per_s,torque_n_cm\n200,30\n", "c.csv", motor, 12.0).Points);
        Assert.Equal(2.0 * Math.PI, steps.SpeedRadiansPerSecond, 1e-12);
        Assert.Equal(0.3, steps.TorqueNewtonMetres, 1e-12);
    }

    [Theory]
    [InlineData("speed: found a quantity without its unit", "speed,torque_n_m\n60,0.3\n")]
    [InlineData("speed_deg_per_s: found a unit that is not known here", "speed_deg_per_s,torque_n_m\n60,0.3\n")]
    [InlineData("speed_rpm: found -60", "speed_rpm,torque_n_m\n-60,0.3\n")]
    [InlineData("torque_n_m: found \"0,3\" (a comma is not a decimal point)", "speed_rpm,torque_n_m\n60,\"0,3\"\n")]
    [InlineData("torque_n_m: found no such column", "speed_rpm\n60\n")]
    [InlineData("no torque above zero", "speed_rpm,torque_n_m\n60,0\n")]
    [InlineData("mode: found \"half\"", "speed_rpm,torque_n_m,mode\n60,0.3,half\n")]
    public void What_is_wrong_with_a_curve_is_told(string message, string text)
    {
        MeasuredTableResult result = MeasuredTable.ReadText(text, "c.csv", Read($"{Head}\n{Good}\n").Motors[0].Motor, 12.0);
        Assert.Empty(result.Points);
        Assert.Contains(result.Problems, problem => problem.ToString().Contains(message, StringComparison.Ordinal));
    }

    private static MotorTableResult Read(string text) => MotorTable.ReadText(text, "t.csv");
}
