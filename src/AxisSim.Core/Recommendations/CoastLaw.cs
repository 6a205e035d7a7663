using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>How an axis whose motors lose their power comes to rest.</summary>
public enum CoastEnd
{
    /// <summary>Friction stops it after an angle.</summary>
    Stops,

    /// <summary>The worm locks at once: the axis winds up its own elasticity, or slips in its clutch.</summary>
    Locks,

    /// <summary>Gravity overcomes friction: it runs on until it hangs, or hits something.</summary>
    RunsAway,
}

/// <summary>What a power cut at full speed does.</summary>
/// <param name="End">How it ends.</param>
/// <param name="AngleRadians">Angle until rest, rad; infinite when it runs away.</param>
/// <param name="Seconds">Time until rest, s; infinite when it runs away.</param>
/// <param name="ShockNewtonMetres">Torque on the worm wheel where the worm locks, N m; 0 else.</param>
/// <param name="ClutchSlips">Whether that torque is above the clutch's.</param>
/// <param name="MovesFromRest">Whether gravity sets the axis going again from rest, once it has stopped.</param>
public readonly record struct Coast(CoastEnd End, double AngleRadians, double Seconds, double ShockNewtonMetres, bool ClutchSlips, bool MovesFromRest);

/// <summary>Coasting of an axis without power, in closed form.</summary>
/// <remarks>
/// <para>Rigid gear with the losses of <see cref="MeshLoss"/>; dry friction and the motor's dry friction only (drag would stop it sooner; the detent torque averages out). Symbols: Jr
/// rotor side inertia, J axis inertia, n reduction, Tr motor friction, T = gravity helping less axis friction. The gear passes t from rotor to axis (at the rotor):
/// <c>n Jr a = -Tr - g t</c>, <c>J a = T + n t</c>, with g = 1/eta_d while the rotor drives (t above 0) and g = eta_b while the axis drives, so</para>
/// <para><c>a = (g T/n - Tr)/(n Jr + g J/n)</c>, the angle is <c>w^2/(2 |a|)</c> and the energy <c>(Jr n^2 + J) w^2/2</c> goes into friction.</para>
/// <para>With a self-locking worm g is negative while the axis drives. When <c>|g| J/n</c> reaches <c>n Jr</c>, no deceleration of the rotor is slow enough for the axis: the worm locks. Then the mesh
/// stops the axis like a spring, <c>w sqrt(J/k)</c> beyond half the backlash, with the torque <c>w sqrt(k J) + T</c>; beyond the clutch's torque Tc it slips by
/// <c>J w^2/(2 (Tc - T))</c>.</para>
/// </remarks>
public static class CoastLaw
{
    /// <summary>Coasting of an axis from a rate (rad/s) while gravity helps with a torque (N m, opposing when negative).</summary>
    public static Coast Of(MountSetup setup, MountAxis axis, MountPose pose, double rateRadiansPerSecond, double helpNewtonMetres)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double cold = setup.Disturbances.ColdGreaseFactor;
        var coast = new CoastInput(
            model.Motor.RotorInertiaKilogramSquareMetres + model.Train.ReflectedTrainInertia,
            setup.Load.Inertia(axis, pose.DeclinationRadians),
            model.Train.TotalRatio,
            AxisAssembly.TotalLoss(model.Train, cold),
            model.Motor.CoulombTorqueNewtonMetres,
            helpNewtonMetres,
            model.Bearings.CoulombNewtonMetres * cold,
            Math.Max(model.Bearings.BreakawayNewtonMetres, model.Bearings.CoulombNewtonMetres) * cold,
            model.Motor.DetentTorqueNewtonMetres,
            model.Train.StiffnessNewtonMetresPerRadian,
            0.5 * model.Train.BacklashRadians,
            model.Train.ClutchNewtonMetres);
        return Of(coast, rateRadiansPerSecond);
    }

    internal static Coast Of(in CoastInput p, double rate)
    {
        bool starts = Starts(p);
        double pull = p.Help - p.AxisFriction;
        double driving = 1.0 + p.Loss.Driving, back = 1.0 - p.Loss.BackDriving;
        double a = Acceleration(p, driving, pull, out double passed);
        if (passed < 0.0)
        {
            // The axis drives.
            double room = (p.Ratio * p.RotorInertia) + (back * p.AxisInertia / p.Ratio);
            if (room <= 0.0)
            {
                return Locks(p, rate, pull, starts);
            }

            a = Acceleration(p, back, pull, out _);
        }

        return a >= 0.0
            ? new Coast(CoastEnd.RunsAway, double.PositiveInfinity, double.PositiveInfinity, 0.0, false, starts)
            : new Coast(CoastEnd.Stops, rate * rate / (-2.0 * a), rate / -a, 0.0, false, starts);
    }

    private static Coast Locks(in CoastInput p, double rate, double pull, bool starts)
    {
        double shock = (rate * Math.Sqrt(p.Stiffness * p.AxisInertia)) + Math.Max(0.0, pull);
        if (shock <= p.Clutch)
        {
            double quarter = 0.5 * Math.PI * Math.Sqrt(p.AxisInertia / p.Stiffness);
            return new Coast(CoastEnd.Locks, (2.0 * p.HalfBacklash) + (rate * Math.Sqrt(p.AxisInertia / p.Stiffness)), quarter, shock, false, starts);
        }

        double brake = p.Clutch - pull;
        return brake <= 0.0
            ? new Coast(CoastEnd.RunsAway, double.PositiveInfinity, double.PositiveInfinity, shock, true, starts)
            : new Coast(CoastEnd.Locks, 0.5 * p.AxisInertia * rate * rate / brake, p.AxisInertia * rate / brake, shock, true, starts);
    }

    private static double Acceleration(in CoastInput p, double gain, double pull, out double passed)
    {
        double a = ((gain * pull / p.Ratio) - p.RotorFriction) / ((p.Ratio * p.RotorInertia) + (gain * p.AxisInertia / p.Ratio));
        passed = ((p.AxisInertia * a) - pull) / p.Ratio;
        return a;
    }

    // From rest gravity must pass the breakaway, then the gear backwards, then the motor's friction and detent.
    private static bool Starts(in CoastInput p)
    {
        double back = 1.0 - p.Loss.BackDriving;
        return back > 0.0 && (Math.Abs(p.Help) - p.Breakaway) * back / p.Ratio > p.RotorFriction + p.Detent;
    }
}

/// <summary>Constants of a coasting axis, SI.</summary>
internal readonly record struct CoastInput(
    double RotorInertia, double AxisInertia, double Ratio, MeshLoss Loss, double RotorFriction, double Help, double AxisFriction, double Breakaway, double Detent, double Stiffness, double HalfBacklash, double Clutch);
