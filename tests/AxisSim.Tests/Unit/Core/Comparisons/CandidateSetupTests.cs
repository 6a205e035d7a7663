using AxisSim.Cli.Input;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Comparisons;

/// <summary>What a candidate makes of a mount, on paper and through the settings to copy.</summary>
public sealed class CandidateSetupTests
{
    private const double Degree = Math.PI / 180.0;
    private static readonly MountAxis[] Both = [MountAxis.Polar, MountAxis.Declination];

    [Fact]
    public void Currents_changeover_and_reduction_follow_the_candidate()
    {
        MountSetup mount = Read("heavy-reflector-stalls.toml", "polar.drive.changeover=800 steps/s", "polar.drive.brake_limit=16.8 V").Setup;
        AxisModel model = CandidateSetup.Of(mount, Both, new Candidate(SampleMotors.Of("17 long, 1.8 deg"), 360.0, 24.0), 0.8).Polar!;
        Assert.Equal(0.8 * 1.7, model.Drive.SlewCurrentAmperes, 1e-12);

        // 0.6 and 0.5 A of 1.0 A in the file are 60 and 50 % of 1.7 A.
        Assert.Equal(0.6 * 1.7, model.Drive.TrackingCurrentAmperes, 1e-12);
        Assert.Equal(0.5 * 1.7, model.Drive.HoldingCurrentAmperes, 1e-12);

        // 800 full steps a second: 4 rev/s with 200 steps.
        Assert.Equal(4.0 * 2.0 * Math.PI, model.Drive.ChangeoverRadiansPerSecond, 1e-9);
        Assert.Equal(24.0, model.Drive.SupplyVolts);
        Assert.Equal(36.0, model.Drive.BrakeLimitVolts, 1e-9);

        // 144 teeth and a belt of 2.5.
        Assert.Equal(360.0, model.Train.TotalRatio, 1e-9);
        Assert.Equal((2.5, 0.97), (model.Train.Stages[0].Ratio, model.Train.Stages[0].Efficiency));
        Assert.Equal(mount.Polar!.Train.Worm, model.Train.Worm);
    }

    [Fact]
    public void A_loss_of_voltage_comes_off_the_supply()
    {
        MountSetup mount = Read("heavy-reflector-stalls.toml").Setup;
        MotorChoice fitted = SampleMotors.Of("17 long, 1.8 deg") with { VoltageLossVolts = 1.5 };
        Assert.Equal(22.5, CandidateSetup.Of(mount, Both, new Candidate(fitted, null, 24.0), 1.0).Polar!.Drive.SupplyVolts);
        Assert.Equal(11.2 - 1.5, CandidateSetup.Of(mount, Both, new Candidate(fitted, null, null), 1.0).Polar!.Drive.SupplyVolts, 1e-12);
    }

    [Fact]
    public void A_reduction_without_a_stage_adds_a_belt_and_the_own_one_changes_nothing()
    {
        GearTrain bare = new() { Worm = new WormStage { WheelTeeth = 180, LeadAngleRadians = 3 * Degree, FrictionCoefficient = 0.08 }, StiffnessNewtonMetresPerRadian = 1e4 };
        GearTrain belted = SetupEdits.WithReduction(bare, 540.0);
        Assert.Equal((540.0, 0.97, 0.0), (belted.TotalRatio, belted.Stages.Single().Efficiency, belted.Stages[0].InertiaKilogramSquareMetres));
        Assert.Same(bare, SetupEdits.WithReduction(bare, 180.0));
    }

    [Theory]
    [InlineData("heavy-reflector-stalls.toml", 360.0, 24.0)]
    [InlineData("heavy-reflector.toml", null, null)]
    [InlineData("light-refractor.toml", 500.0, 15.0)]
    [InlineData("two-stage-newtonian.toml", 400.0, null)]
    public void The_settings_to_copy_make_the_same_mount(string file, double? ratio, double? volts)
    {
        Scenario scenario = Read(file);
        MotorChoice motor = SampleMotors.Of("17 short, 0.9 deg");
        MountSetup made = CandidateSetup.Of(scenario.Setup, Both, new Candidate(motor, ratio, volts), 1.0);
        double[] rates = [1.25 * Degree, 1.5 * Degree];
        for (int i = 0; i < 2; i++)
        {
            made = EnvelopeStudy.With(made, Both[i], scenario.Setup.Axis(Both[i]).Motion.RampInUseSeconds, rates[i]);
        }

        MountSetup read = Read(file, [.. CandidateSettings.Of(scenario.Setup, Result(made, motor, ratio, volts))!]).Setup;
        foreach (MountAxis axis in Both)
        {
            AxisModel a = made.Axis(axis), b = read.Axis(axis);
            Assert.Equal(Numbers(a), Numbers(b), (x, y) => x == y || Math.Abs(x - y) <= 1e-9 * Math.Abs(x));
        }
    }

    private static double[] Numbers(AxisModel model)
    {
        StepperMotor m = model.Motor;
        AxisMotion motion = model.Motion;
        return
        [
            m.StepsPerRevolution, m.HoldingTorqueNewtonMetres, m.RatedCurrentAmperes, m.ResistanceOhms, m.InductanceHenries, m.RotorInertiaKilogramSquareMetres, m.DetentTorqueNewtonMetres,
            m.ViscousNewtonMetreSecondsPerRadian, m.CoulombTorqueNewtonMetres, m.ThermalResistanceKelvinPerWatt, m.ThermalTimeConstantSeconds, m.Insulation.LimitCelsius(),
            model.Drive.SupplyVolts, model.Drive.SlewCurrentAmperes, model.Drive.TrackingCurrentAmperes, model.Drive.HoldingCurrentAmperes, model.Drive.ChangeoverRadiansPerSecond, model.Drive.BrakeLimitVolts,
            model.Train.TotalRatio, motion.SlewRateRadiansPerSecond, motion.RampInUseSeconds,
        ];
    }

    private static CandidateResult Result(MountSetup setup, MotorChoice motor, double? ratio, double? volts) => new()
    {
        Candidate = new Candidate(motor, ratio, volts),
        Setup = setup,
        Index = 0,
        Fate = CandidateFate.Ranked,
        Axes = [.. Both.Select(axis => new CandidateAxis { Axis = axis, BoundRadiansPerSecond = 1.0, Limit = Limit.Friction, LimitCelsius = 130.0, InertiaRatio = 1.0, Facts = Facts.Of(setup, axis) })],
    };

    private static Scenario Read(string file, params string[] settings)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Repository.PathOf("scenarios", file), settings);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario;
    }
}
