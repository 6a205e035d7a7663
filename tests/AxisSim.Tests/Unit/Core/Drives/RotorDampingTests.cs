using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Drives;

/// <summary>Damping of the rotor as a share of critical.</summary>
public sealed class RotorDampingTests
{
    private static readonly StepperMotor Bare = BenchmarkCase.Motor with { DetentTorqueNewtonMetres = 0.0, CoulombTorqueNewtonMetres = 0.0, ViscousNewtonMetreSecondsPerRadian = 0.0 };

    /// <summary>By hand: Km = 0.40/(sqrt2 x 1.5) = 0.18856, K = 100 Km 1.5 = 28.284 N m/rad, 2 sqrt(6e-6 K) = 26.054 mN m s/rad; 5 % are 1.3027.</summary>
    [Fact]
    public void The_share_is_of_the_rotor_on_its_field()
    {
        AxisModel usual = Model(drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = null });
        Assert.Equal(26.054e-3, usual.CriticalDampingNewtonMetreSecondsPerRadian, 1e-6);
        Assert.Equal(1.3027e-3, usual.DampingNewtonMetreSecondsPerRadian, 1e-7);

        // A softer field takes less to damp: with the root of the current. What is given in N m s/rad stays.
        AxisModel quarter = Model(drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = null, SlewCurrentAmperes = 0.25 * 1.5 });
        Assert.Equal(0.5 * usual.DampingNewtonMetreSecondsPerRadian, quarter.DampingNewtonMetreSecondsPerRadian, 1e-12);
        Assert.Equal(2e-4, Model(drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = 2e-4 }).DampingNewtonMetreSecondsPerRadian);

        DerivedFacts facts = Facts.Of(BenchmarkCase.Setup(usual, 4.0, 0.1, 1.0), MountAxis.Polar);
        Assert.Equal(0.05, facts.DampingShare, 1e-12);
        Assert.Equal(1.3027e-3, facts.DampingNewtonMetreSecondsPerRadian, 1e-7);
    }

    /// <summary>The published motor of <see cref="RotorDamping"/>: 8e-4 N m s/rad, 4.5e-5 kg m2, 50 teeth, 0.19 N m/A make 0.9 % of critical at 5 A.</summary>
    [Fact]
    public void A_published_motor_has_the_least_usual_share_by_itself()
    {
        StepperMotor motor = Bare with { StepsPerRevolution = 200, HoldingTorqueNewtonMetres = 0.19 * Math.Sqrt(2.0) * 5.0, RatedCurrentAmperes = 5.0, RotorInertiaKilogramSquareMetres = 4.5e-5 };
        double share = 8e-4 / StaticTorque.CriticalDamping(motor, StaticTorque.Peak(motor, 5.0, 0.0), 4.5e-5);
        Assert.Equal(0.00865, share, 5e-6);
        Assert.Equal(RotorDamping.LeastUsualShare, share, 0.0015);
    }

    /// <summary>A rotor let go beside its rest swings with the logarithmic decrement of that share, 2 pi z/sqrt(1 - z^2), and the drive at its usual regulator adds nothing.</summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.3)]
    public void A_free_swing_decays_by_it(double share)
    {
        const double Step = 5e-6, Until = 0.02;
        AxisModel model = Model(drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = null, DampingShare = share, RegulatorSeconds = ChopperDrive.UsualRegulatorSeconds }) with { Motor = Bare };
        var command = new PhaseCommand(MicrostepTable.Of(64), 100.0, 1.0, [new DriveEvent(0.0, 1.5, false)]);
        var motor = new ChopperStepper(Bare, model.Drive, command, new WindingHeat(20.0, 0.0, 1.0), Step);
        motor.SetCurrents(1.5, 0.0);
        var parameters = new AxisParameters { RotorInertia = 6e-6, PlanDamping = model.DampingNewtonMetreSecondsPerRadian, AxisInertia = double.PositiveInfinity };
        var rotor = new AxisDynamics<ChopperStepper, FunctionLoad>(parameters, motor, new FunctionLoad(), new AxisState { Rotor = 1e-5 });
        var peaks = new List<double>();
        (double before, double now) = (1e-5, 1e-5);
        Assemblies.Stepping.Run(ref rotor, Step, Until, after: (double _, ref AxisDynamics<ChopperStepper, FunctionLoad> dynamics) =>
        {
            double next = dynamics.State.Rotor;
            if (now > before && now >= next)
            {
                peaks.Add(now + (0.125 * (next - before) * (next - before) / ((2.0 * now) - next - before)));
            }

            (before, now) = (now, next);
        });
        double decrement = 2.0 * Math.PI * share / Math.Sqrt(1.0 - (share * share));
        Assert.True(peaks.Count >= 3);
        Assert.Equal(decrement, Math.Log(peaks[0] / peaks[2]) / 2.0, 2e-3 * decrement);
    }

    /// <summary>Full-stepping through the rotor's resonance loses step without damping; damping cures it, and the cure holds as told.</summary>
    [Fact]
    public void More_damping_is_among_the_cures_of_a_resonance()
    {
        MountSetup setup = Resonant(0.0);
        AxisResult result = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions());
        Assert.Equal(Verdict.Stalls, result.Outcome.Verdict);
        Cure cure = Assert.Single(result.Diagnosis!.Cures.Alone, one => one.Kind == CureKind.MoreDamping);
        Assert.Equal(0.0, cure.From);
        Assert.Equal(Limit.Swings, result.Diagnosis.Why.Limit);
        Assert.InRange(cure.To!.Value, 0.01, 0.5);
        Assert.Equal(Verdict.Arrives, MoveStudy.Run(Resonant(cure.To.Value), MountAxis.Polar, new MoveOptions { Explain = false }).Outcome.Verdict);
    }

    private static MountSetup Resonant(double share) => BenchmarkCase.Setup(
        Model(drive => drive with { GivenDampingNewtonMetreSecondsPerRadian = null, DampingShare = share, ChangeoverRadiansPerSecond = 1.0 }) with
        {
            Motion = BenchmarkCase.Axis.Motion with { Ramp = Ramp.OfSeconds(3.0) },
        },
        -4.0,
        10.0 * BenchmarkCase.Degree,
        1.0);

    private static AxisModel Model(Func<ChopperDrive, ChopperDrive> change) => BenchmarkCase.Axis with { Drive = change(BenchmarkCase.Drive) };
}
