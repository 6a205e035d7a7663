using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>The scenarios that come with the program, and the template.</summary>
public sealed class ShippedScenarioTests
{
    private const double Degree = Math.PI / 180.0;
    private const double Arcsecond = Math.PI / 648000.0;

    public static TheoryData<string> Names => [.. Repository.Scenarios.Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_shipped_scenario_reads_without_a_problem(string name)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Repository.PathOf("scenarios", name), []);
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Scenario);
        Assert.Contains("Harrow Fell Observatory", result.Scenario.SiteName, StringComparison.Ordinal);
    }

    [Fact]
    public void The_seven_scenarios_of_the_docs_are_there()
    {
        HashSet<string> names = [.. Repository.Scenarios.Select(path => Path.GetFileName(path))];
        Assert.Subset(names, new HashSet<string> { "heavy-reflector.toml", "heavy-reflector-stalls.toml", "heavy-reflector-rescued.toml", "light-refractor.toml", "nominal.toml", "nominal-opposing.toml", "two-stage-newtonian.toml" });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_microstep_told_in_a_comment_is_that_of_the_figures(string name)
    {
        string path = Repository.PathOf("scenarios", name);
        AxisModel axis = ScenarioReader.ReadFile(path, []).Scenario!.Setup.Polar!;
        double microstep = axis.Motor.FullStepRadians / axis.Train.TotalRatio / axis.Drive.MicrostepsPerFullStep / Arcsecond;
        System.Text.RegularExpressions.Match told = System.Text.RegularExpressions.Regex.Match(File.ReadAllText(path), @"(?m)^microsteps = .*# ([0-9.]+) arcsec at the axis");
        Assert.True(told.Success, "the comment is gone");

        // Paper, nominal: 360 x 3600 arcsec / (400 steps x 720 x 64) = 0.0703 arcsec. Two digits are shown.
        const double TwoDigits = 0.05;
        Assert.Equal(1.0, double.Parse(told.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) / microstep, TwoDigits);
    }

    [Fact]
    public void The_template_reads_without_a_problem_and_names_every_key()
    {
        ScenarioResult result = ScenarioReader.ReadText(ScenarioTemplate.Text, "template", []);
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Scenario!.Setup.Declination);
        foreach (ScenarioKey key in ScenarioKeys.All.Where(key => !key.Path.StartsWith("declination.", StringComparison.Ordinal) || key.Name == "like"))
        {
            Assert.Matches($"(?m)^(# )?{key.Name} = ", ScenarioTemplate.Text);
        }
    }

    [Fact]
    public void The_nominal_case_is_exactly_the_benchmark_case()
    {
        Scenario scenario = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal.toml"), []).Scenario!;
        AxisSim.Core.Mount.AxisModel axis = scenario.Setup.Polar!;
        Assert.Null(scenario.Setup.Declination);
        Assert.Equal((100.0, 1.5, 3.0e-3, 1.5, 0.40, 0.015, 6e-6, 1e-5, 0.005), (axis.Motor.RotorTeeth, axis.Motor.ResistanceOhms, axis.Motor.InductanceHenries, axis.Motor.RatedCurrentAmperes, axis.Motor.HoldingTorqueNewtonMetres, axis.Motor.DetentTorqueNewtonMetres, axis.Motor.RotorInertiaKilogramSquareMetres, axis.Motor.ViscousNewtonMetreSecondsPerRadian, axis.Motor.CoulombTorqueNewtonMetres));
        Assert.Equal((24.0, 0.0, 1.5, 64, 20.0, 1.0, 1e-4), (axis.Drive.SupplyVolts, axis.Drive.SupplyResistanceOhms, axis.Drive.SlewCurrentAmperes, axis.Drive.MicrostepsPerFullStep, axis.Drive.ChangeoverRadiansPerSecond, axis.Drive.FullStepCurrentFraction, axis.Drive.RegulatorSeconds));
        Assert.Equal((720.0, 2e4, 0.05, 60.0, 0.45), (axis.Train.TotalRatio, axis.Train.StiffnessNewtonMetresPerRadian, axis.Train.DampingRatio, axis.Train.ClutchNewtonMetres, axis.Train.Worm.GivenDrivingEfficiency));
        Assert.Equal((0.8, 0.8, 0.1), (axis.Bearings.CoulombNewtonMetres, axis.Bearings.BreakawayNewtonMetres, axis.Bearings.ViscousNewtonMetreSecondsPerRadian));
        Assert.Equal(30 * Arcsecond, axis.Train.BacklashRadians, 15);
        Assert.Equal(8 * Arcsecond, axis.Train.Worm.PeriodicError.FirstAmplitudeRadians, 15);
        Assert.Equal((2.0, 3.0), (axis.Motion.Ramp.Seconds, scenario.Setup.Move.ObserveSeconds));
        Assert.Equal(3 * Degree, axis.Motion.SlewRateRadiansPerSecond, 15);
        Assert.Equal(90 * Degree, scenario.Setup.Move.End.PolarRadians, 15);
        Assert.False(scenario.Setup.Disturbances.SyncProbe);
        // +T cos(lat) sin(angle) with T = 4 N m at 50 deg, so 2.5712 N m at 90 deg; it opposes in the other file.
        MountPose level = new(90 * Degree, 0);
        Assert.Equal(4 * Math.Cos(50 * Degree), scenario.Setup.Load.GravityTorque(MountAxis.Polar, level), 12);
        Scenario opposing = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal-opposing.toml"), []).Scenario!;
        Assert.Equal(-4 * Math.Cos(50 * Degree), opposing.Setup.Load.GravityTorque(MountAxis.Polar, level), 12);
        Assert.Equal(axis.Motor, opposing.Setup.Polar!.Motor);
    }

    [Fact]
    public void Figures_for_a_half_coil_and_rms_currents_are_converted_and_shown()
    {
        Scenario scenario = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "light-refractor.toml"), []).Scenario!;
        Assert.Equal(1.55 * Math.Sqrt(2), scenario.Setup.Polar!.Motor.RatedCurrentAmperes, 14);
        Assert.Equal(1.55 * Math.Sqrt(2), scenario.Setup.Polar.Drive.SlewCurrentAmperes, 14);
        Assert.Equal(1.6, scenario.Setup.Polar.Motor.ResistanceOhms, 14);
        Assert.Contains(scenario.Notes, note => note.Contains("rated current 1.55 -> 2.192 A", StringComparison.Ordinal));
        Assert.Contains(scenario.Notes, note => note.Contains("0.7 A rms is 0.9899 A peak", StringComparison.Ordinal));
        // Hour angle -3 h with the telescope west: polar angle -45 deg; 2 h with the telescope east: 30 - 180 = -150 deg, declination 180 - 40.
        Assert.Equal(-45 * Degree, scenario.Setup.Move.Start.PolarRadians, 12);
        Assert.Equal(-150 * Degree, scenario.Setup.Move.End.PolarRadians, 12);
        Assert.Equal(140 * Degree, scenario.Setup.Move.End.DeclinationRadians, 12);
    }
}
