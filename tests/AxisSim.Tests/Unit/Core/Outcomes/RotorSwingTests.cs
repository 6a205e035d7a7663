using AxisSim.Core;
using AxisSim.Core.Mount;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>The rotor's greatest swing as a share of what its field holds, against estimates on paper and against the edge of losing step.</summary>
public sealed class RotorSwingTests
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>A steady load of half the pull-out torque: the rotor lags by asin(0.5), 30 degrees, and could lag by 150.</summary>
    [Fact]
    public void A_steady_load_of_half_the_torque_takes_30_of_150_degrees()
    {
        const double Speed = 5.0;
        const double Ripple = 0.015; // of the probe's pulses, 1.4 % of the torque
        MountSetup mount = BenchmarkCase.Slew(0.0);
        AxisModel model = mount.Axis(MountAxis.Polar);
        model = model with { Motor = model.Motor with { DetentTorqueNewtonMetres = 0.0 } };
        mount = mount.With(MountAxis.Polar, model);
        double ratio = model.Train.TotalRatio;
        double greatest = model.Motor.TorqueConstantNewtonMetresPerAmpere * model.Drive.SlewCurrentAmperes;
        AxisMotion motion = new() { SlewRateRadiansPerSecond = Speed / ratio, Ramp = Ramp.OfSeconds(4.0), Shape = RampShape.SCurve, JerkShare = 0.5 };
        double friction = model.Motor.CoulombTorqueNewtonMetres + (model.Motor.ViscousNewtonMetreSecondsPerRadian * Speed);
        double atAxis = (((0.5 * greatest) - friction) * ratio * 0.45) - model.Bearings.CoulombNewtonMetres;
        MountSetup setup = SteadyMoves.Of(Damped(mount, 1.0), MountAxis.Polar, atAxis, motion, double.PositiveInfinity, 3.0);
        RotorSwing swing = Run(setup).Swing!;
        Assert.Equal(30.0 / 150.0, swing.Share, Ripple);
        Assert.Equal(-30.0 * Degree, swing.AngleRadians, 2.0 * Degree);
        Assert.Equal(150.0 * Degree, swing.HeldRadians, 2.0 * Degree);
        Assert.False(swing.FullStepping);
    }

    /// <summary>A full step moves the field by 90 degrees at once; a rotor at rest overshoots by exp(-pi z/sqrt(1 - z^2)) of it, z its damping as a share of critical: by all of it without damping. Unloaded, its field holds 180.</summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.05)]
    [InlineData(0.2)]
    public void A_full_step_from_rest_overshoots_by_itself(double damping)
    {
        // The field swings softer than a spring at 90 degrees, so the damping takes more of it; and the mean field is behind the field by 4 % of the step when the rotor turns round.
        const double Soft = 0.06;
        MountSetup mount = BenchmarkCase.Slew(0.0);
        AxisModel model = mount.Axis(MountAxis.Polar);
        double ratio = model.Train.TotalRatio, step = model.Motor.FullStepRadians / ratio;

        // Two steps a second, nothing behind the rotor but an axis that the mesh hardly moves.
        mount = Damped(mount, damping) with { Move = mount.Move with { End = mount.Move.Start with { PolarRadians = mount.Move.Start.PolarRadians + (8.0 * step) } } };
        model = mount.Axis(MountAxis.Polar);
        MountSetup setup = mount.With(MountAxis.Polar, model with
        {
            Motor = model.Motor with { DetentTorqueNewtonMetres = 0.0, CoulombTorqueNewtonMetres = 0.0, ViscousNewtonMetreSecondsPerRadian = 0.0 },
            Drive = model.Drive with { ChangeoverRadiansPerSecond = 1e-4, RegulatorSeconds = 20e-6 },
            Train = model.Train with { Worm = model.Train.Worm with { GivenDrivingEfficiency = 1.0, PeriodicError = AxisSim.Core.Gearing.PeriodicError.None }, StiffnessNewtonMetresPerRadian = 100.0 },
            Bearings = new AxisBearings(),
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 2.0 * step, Ramp = Ramp.OfSeconds(0.1) },
        });
        RotorSwing swing = Run(setup).Swing!;
        double over = Math.Exp(-Math.PI * damping / Math.Sqrt(1.0 - (damping * damping)));
        Assert.True(swing.FullStepping);
        Assert.Equal(Math.Max(over, Math.Exp(-Math.PI)) * 0.5, swing.Share, Soft);
    }

    /// <summary>Just below the load at which the move fails the field holds hardly more than the swing; far below it, much more.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void Near_the_edge_the_rotor_swings_through_all_that_the_field_holds()
    {
        MountSetup setup = Shipped("heavy-reflector");
        Assert.InRange(Run(setup.Loaded(MountAxis.Polar, 5.5)).Swing!.Share, 0.75, 1.1);
        Assert.InRange(Run(setup).Swing!.Share, 0.05, 0.3);
        AxisOutcome lost = Run(setup.Loaded(MountAxis.Polar, 6.5));
        Assert.Equal(MoveEnd.Stalls, lost.Verdict);
        Assert.Null(lost.Swing);
    }

    /// <summary>A rotor that nothing damps rings through a third of what its field holds, three times as far as a damped one, while the torque margin tells of plenty.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void A_rotor_that_rings_is_seen()
    {
        MountSetup setup = Shipped("nominal");
        AxisOutcome damped = Run(Damped(setup, 0.3)), bare = Run(Damped(setup, 1e-4));
        Assert.InRange(damped.Swing!.Share, 0.0, 0.15);
        Assert.InRange(bare.Swing!.Share, 0.3, 1.0);
        Assert.True(bare.Margin.Value > 0.9);
    }

    private static MountSetup Damped(MountSetup setup, double share)
    {
        AxisModel model = setup.Axis(MountAxis.Polar);
        return setup.With(MountAxis.Polar, model with { Drive = model.Drive with { GivenDampingNewtonMetreSecondsPerRadian = null, DampingShare = share } });
    }

    private static MountSetup Shipped(string name) => AxisSim.Files.Scenarios.ScenarioReader.ReadFile(Repository.PathOf("scenarios", name + ".toml"), []).Scenario!.Setup;

    private static AxisOutcome Run(MountSetup setup) => MoveStudy.RunUnchecked(setup, MountAxis.Polar, new MoveOptions { Explain = false }).Outcome;
}
