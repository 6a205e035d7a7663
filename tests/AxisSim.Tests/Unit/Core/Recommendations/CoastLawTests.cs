using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Recommendations;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Coasting in closed form against the step of the simulator with no motor on it.</summary>
public sealed class CoastLawTests
{
    private const double Rate = 3.0 * Setups.Degree;

    // The closed form has a rigid gear; this one winds up by 1 arcsec at 48 N m.
    private const double Stiff = 1e7;

    // What twist and start-up ringing of the mesh leave: a hundredth of angles of 100 to 800 arcsec.
    private const double Share = 0.01;

    // J 6 kg m2, rotor 6e-6 kg m2 at 720: 3.1 kg m2 seen at the axis; motor friction 5 mN m, 3.6 N m at the axis.
    private static readonly CoastInput Bench = new(6e-6, 6.0, 720.0, MeshLoss.FromEfficiencies(0.8, 0.75), 0.005, 2.0, 0.8, 0.8, 0.0, Stiff, 0.0, double.PositiveInfinity);

    /// <summary>Gear back-drives, gravity helps by 2 N m: (0.75 x 1.2/720 - 0.005)/(720 x 6e-6 + 0.75 x 6/720) = -0.355 rad/s2, so 0.0524^2/0.71 = 3.86e-3 rad.</summary>
    [Fact]
    public void It_coasts_against_the_friction_of_its_motor()
    {
        Coast coast = CoastLaw.Of(Bench, Rate);
        Assert.Equal(CoastEnd.Stops, coast.End);
        Assert.Equal(3.86e-3, coast.AngleRadians, 2e-5);
        Compare(Bench, coast);
    }

    /// <summary>The axis' friction is so great that the rotor must drive it: (-20/(0.8 x 720) - 0.005)/(720 x 6e-6 + 6/(0.8 x 720)) = -2.7 rad/s2.</summary>
    [Fact]
    public void The_rotor_drives_the_axis_on()
    {
        CoastInput braked = Bench with { Help = 0.0, AxisFriction = 20.0, Breakaway = 20.0 };
        Coast coast = CoastLaw.Of(braked, Rate);
        Assert.Equal(CoastEnd.Stops, coast.End);
        Assert.Equal(Rate * Rate / (2.0 * 2.7), coast.AngleRadians, 2e-5);
        Compare(braked, coast);
    }

    /// <summary>A worm that locks, but so much inertia on its own side that it turns on for a while: the axis pushes on it and brakes it so.</summary>
    [Fact]
    public void A_locking_worm_with_a_heavy_rotor_brakes_the_sooner()
    {
        CoastInput locking = Bench with { Loss = MeshLoss.FromEfficiencies(0.45, 2.0 - (1.0 / 0.45)) };
        Coast coast = CoastLaw.Of(locking, Rate);
        Assert.Equal(CoastEnd.Stops, coast.End);
        Assert.True(coast.AngleRadians < CoastLaw.Of(Bench, Rate).AngleRadians);
        Assert.False(coast.MovesFromRest);
        Compare(locking, coast);
    }

    /// <summary>Little inertia on the worm's side: it locks, and the mesh takes the shock, 0.0524 x sqrt(4e4 x 8) = 29.6 N m in 0.0524 x sqrt(8/4e4) = 153 arcsec.</summary>
    [Fact]
    public void A_locking_worm_with_a_light_rotor_locks_at_once()
    {
        // The rotor still turns a little and the mesh damps with 5 %: a tenth of shock and angle.
        const double Loose = 0.1;
        CoastInput light = Bench with { RotorInertia = 1e-6, AxisInertia = 8.0, Ratio = 216.0, Loss = MeshLoss.FromEfficiencies(0.35, -0.5), Help = 0.0, AxisFriction = 0.0, Stiffness = 4e4 };
        Coast coast = CoastLaw.Of(light, Rate);
        Assert.Equal(CoastEnd.Locks, coast.End);
        Assert.Equal(29.6, coast.ShockNewtonMetres, 0.1);
        (double angle, _, double shock) = Simulate(light, 0.1);
        Assert.InRange(shock, (1.0 - Loose) * coast.ShockNewtonMetres, (1.0 + Loose) * coast.ShockNewtonMetres);
        Assert.InRange(angle, (1.0 - Loose) * coast.AngleRadians, (1.0 + Loose) * coast.AngleRadians);

        // A clutch of 10 N m: J w^2/2 = 0.0110 J over 10 N m.
        Coast slips = CoastLaw.Of(light with { Clutch = 10.0 }, Rate);
        Assert.True(slips.ClutchSlips);
        Assert.Equal(0.5 * 8.0 * Rate * Rate / 10.0, slips.AngleRadians, 1e-12);
    }

    [Fact]
    public void An_overhauling_load_runs_away_and_sets_off_from_rest()
    {
        CoastInput heavy = Bench with { Help = 20.0 };
        Coast coast = CoastLaw.Of(heavy, Rate);
        Assert.Equal(CoastEnd.RunsAway, coast.End);
        Assert.True(coast.MovesFromRest);
        Assert.True(Simulate(heavy, 1.0).Speed > 1.1 * Rate);
        Assert.False(CoastLaw.Of(heavy with { Detent = 0.02 }, Rate).MovesFromRest);
    }

    /// <summary>What is lost in friction is the energy of motion and of gravity: half (n^2 Jr + J) w^2 + T angle.</summary>
    [Fact]
    public void Energy_goes_into_friction()
    {
        Coast coast = CoastLaw.Of(Bench, Rate);
        double energy = 0.5 * ((720.0 * 720.0 * 6e-6) + 6.0) * Rate * Rate, gravity = 2.0 * coast.AngleRadians;

        // The axis passes t = J |a| + 1.2 N m to the worm, of which a quarter is lost.
        double passed = (6.0 * Rate / coast.Seconds) + 1.2;
        double lost = coast.AngleRadians * (0.8 + (0.005 * 720.0) + (0.25 * passed));
        Assert.Equal(energy + gravity, lost, 1e-9 * energy);
    }

    private static void Compare(CoastInput input, Coast coast)
    {
        (double angle, double speed, _) = Simulate(input, 1.5 * coast.Seconds);
        Assert.InRange(angle, (1.0 - Share) * coast.AngleRadians, (1.0 + Share) * coast.AngleRadians);
        Assert.True(Math.Abs(speed) < 0.01 * Rate);
    }

    private static (double Greatest, double Speed, double Shock) Simulate(CoastInput p, double seconds)
    {
        var parameters = new AxisParameters
        {
            RotorInertia = p.RotorInertia, RotorCoulomb = p.RotorFriction, WormRatio = p.Ratio, Loss = p.Loss, AxisInertia = p.AxisInertia, AxisCoulomb = p.AxisFriction, AxisBreakaway = p.Breakaway,
            Mesh = new MeshContact(p.Stiffness, 2.0 * 0.05 * Math.Sqrt(p.Stiffness * p.AxisInertia), 0.0),
        };
        double help = p.Help, greatest = 0.0, shock = 0.0;
        var axis = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (_, _) => help), new AxisState { RotorSpeed = Rate * p.Ratio, AxisSpeed = Rate });
        Assemblies.Stepping.Run(ref axis, 10e-6, seconds, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            greatest = Math.Max(greatest, d.State.Axis);
            shock = Math.Max(shock, Math.Abs(d.MeshTorque));
        });
        return (greatest, axis.State.AxisSpeed, shock);
    }
}
