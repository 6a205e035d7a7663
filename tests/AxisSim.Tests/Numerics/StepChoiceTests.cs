using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Numerics;

/// <summary>What the choice of step promises: pull-out torque to 1 %, and the place of rest at a low reduction.</summary>
public sealed class StepChoiceTests
{
    private static readonly StepperMotor Frame23 = BenchmarkCase.Motor with
    {
        StepsPerRevolution = 200, HoldingTorqueNewtonMetres = 1.1, RatedCurrentAmperes = 2.2, ResistanceOhms = 1.6, InductanceHenries = 4.4e-3, RotorInertiaKilogramSquareMetres = 2.6e-5, DetentTorqueNewtonMetres = 0.04,
    };

    private static readonly string[] Low =
    [
        "polar.stages.belt.ratio=27/144", "polar.motion.slew_rate=40 deg/s", "polar.load.inertia=0.5 kg*m^2", "polar.drive.changeover=never", "polar.drive.damping_share=0.05", "polar.axis.friction=0.4 N*m",
    ];

    /// <summary>Torque at which a growing load takes sync, at the greatest sweep and at a quarter of that step. Microstepped at 0.38 rad it would read 3.7 % low.</summary>
    [Theory]
    [InlineData(false, StepChoice.GreatestClampedSweepRadians, 0.01)]
    [InlineData(true, StepChoice.GreatestSweepRadians, 0.005)]
    public void The_greatest_sweep_costs_less_than_a_hundredth_of_the_pull_out(bool full, double sweep, double share)
    {
        double speed = sweep / StepChoice.DefaultSeconds / Frame23.RotorTeeth;
        double fine = PullOut(full, speed, 0.25 * StepChoice.DefaultSeconds);
        Assert.Equal(fine, PullOut(full, speed, StepChoice.DefaultSeconds), share * fine);
    }

    [Fact]
    public void Twice_the_clamped_sweep_costs_more()
    {
        double speed = StepChoice.GreatestSweepRadians / StepChoice.DefaultSeconds / Frame23.RotorTeeth;
        double fine = PullOut(false, speed, 0.25 * StepChoice.DefaultSeconds);
        Assert.InRange(PullOut(false, speed, StepChoice.DefaultSeconds) / fine, 0.93, 0.985);
    }

    /// <summary>The clamp counts only where the drive microsteps and lacks voltage; a full-stepped slew keeps its step.</summary>
    [Fact]
    public void Only_a_clamped_drive_that_microsteps_needs_the_shorter_step()
    {
        ChopperDrive micro = BenchmarkCase.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity };
        Assert.Equal(60.0, StepChoice.ClampedSpeed(BenchmarkCase.Motor, micro, 60.0));
        Assert.Equal(0.0, StepChoice.ClampedSpeed(BenchmarkCase.Motor, micro with { SupplyVolts = 60.0 }, 60.0));
        Assert.Equal(0.0, StepChoice.ClampedSpeed(BenchmarkCase.Motor, BenchmarkCase.Drive, 60.0));
        Assert.Equal(50e-6, StepChoice.For(50e-6, 100.0, 60.0, 0.0).StepSeconds);
        StepChoice clamped = StepChoice.For(50e-6, 100.0, 60.0, 0.0, 60.0);
        Assert.Equal(25e-6, clamped.StepSeconds);
        Assert.Equal("microstepping at the limit of the voltage, the motor turns 0.30 electrical rad in 50 us; up to 0.17 is accurate", clamped.Reason);
    }

    /// <summary>27 : 1 at 40 deg/s: at 50 us it rested 0.3 arcsec off, and 0.4 while afloat; the step taken by itself is held against a quarter of it.</summary>
    [Theory]
    [InlineData("-0.5 N*m")]
    [InlineData("0 N*m")]
    public void A_low_reduction_shortens_the_step_for_its_rest(string imbalance)
    {
        MountSetup setup = Nominal([.. Low, "polar.load.imbalance=" + imbalance]);
        AxisResult taken = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions { Explain = false });
        Assert.Equal(12.5e-6, taken.Step.StepSeconds);
        Assert.Contains("low reduction", taken.Step.Reason, StringComparison.Ordinal);
        double fine = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions { Explain = false, StepSeconds = 2.5e-6 }).Outcome.Settling!.RestRadians;
        Assert.Equal(fine / BenchmarkCase.Arcsecond, taken.Outcome.Settling!.RestRadians / BenchmarkCase.Arcsecond, 0.1);
    }

    /// <summary>An undamped rotor rings on the flanks after the slew, and no step gives its place of rest: that is told. On a usual mount nothing is told.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void A_rest_that_hangs_on_the_last_digit_is_told()
    {
        MountSetup ringing = Nominal([.. Low, "polar.drive.damping_share=0", "polar.axis.friction=0.1 N*m", "polar.load.imbalance=0 N*m"]);
        Settling unsure = MoveStudy.Run(ringing, MountAxis.Polar, new MoveOptions()).Outcome.Settling!;
        Assert.True(Math.Abs(unsure.HalfStep!.Radians!.Value - unsure.RestRadians) > 0.2 * BenchmarkCase.Arcsecond);
        Settling sure = MoveStudy.Run(Nominal(["polar.drive.damping_share=0.05"]), MountAxis.Polar, new MoveOptions()).Outcome.Settling!;
        Assert.Equal(sure.RestRadians, sure.HalfStep!.Radians!.Value, 0.02 * BenchmarkCase.Arcsecond);
    }

    private static MountSetup Nominal(IReadOnlyList<string> settings) => ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal.toml"), settings).Scenario!.Setup;

    private static double PullOut(bool full, double speed, double step)
    {
        const double RunUp = 0.3, Begin = 0.4, Seconds = 0.6, Inertia = 3e-5;
        ChopperDrive drive = BenchmarkCase.Drive with { SupplyVolts = 36.0, SlewCurrentAmperes = 2.2, RegulatorSeconds = ChopperDrive.UsualRegulatorSeconds };
        double bound = PullOutLaw.OnDrive(Frame23, drive, full, drive.SupplyVolts, speed), from = 0.6 * bound, slope = 0.7 * bound / Seconds;
        double Load(double t) => from * Math.Clamp((t - RunUp) / 0.05, 0.0, 1.0) + (slope * Math.Max(0.0, t - Begin));
        double Position(double t) => t < RunUp ? 0.5 * speed * t * t / RunUp : speed * (t - (0.5 * RunUp));
        var command = new PhaseCommand(MicrostepTable.Of(64), Frame23.RotorTeeth, 1.0, [new DriveEvent(0.0, 2.2, false), new DriveEvent(RunUp, 2.2, full)]);
        var law = new ChopperStepper(Frame23, drive, command, new WindingHeat(20.0, 0.0, 1.0), step);
        law.SetCurrents(2.2, 0.0);
        double damping = 0.05 * StaticTorque.CriticalDamping(Frame23, StaticTorque.Peak(Frame23, 2.2, 0.0), Inertia);
        var axis = new AxisDynamics<ChopperStepper, FunctionLoad>(
            new AxisParameters { RotorInertia = Inertia, PlanDamping = damping, AxisInertia = double.PositiveInfinity }, law, new FunctionLoad((t, _) => -Load(t)), default);
        for (long i = 0; i * step < Begin + Seconds; i++)
        {
            axis.Step(new StepContext(i * step, step, Position(i * step), Position((i + 1) * step)));
            if (Math.Abs(Frame23.RotorTeeth * (axis.State.Rotor - Position((i + 1) * step))) > MoveRun.LostRadians)
            {
                return Load((i + 1) * step);
            }
        }

        return double.PositiveInfinity;
    }
}
