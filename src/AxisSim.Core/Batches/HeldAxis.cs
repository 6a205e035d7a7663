using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Batches;

/// <summary>When an axis that has ended its own slew is sure to keep its place whatever the other axis still does: from then on its outcome is known.</summary>
/// <remarks>
/// <para>All that may still act on it is bounded: gravity at any pose, a steady wind, the turning of the other axis, friction where it tracks, with what the train loses; the detent.
/// If these together ask less than <see cref="GreatestShare"/> of the torque that the current after the slew gives, and twice that share of what the clutch passes, and the rotor has stayed within
/// <see cref="CalmFullSteps"/> of its command for <see cref="LaneCase.BeyondSeconds"/>, nothing is left that could carry it over two full steps: the swing that is there holds a seventh of the energy that it takes,
/// and the push less than a third of what is missing.</para>
/// <para>Where the wind changes, the drive full-steps while it tracks, or the voltage does not carry the current, there is no bound, and the axis is watched until the slower axis has ended.</para>
/// </remarks>
internal static class HeldAxis
{
    /// <summary>Greatest share of the torque that holds which may be asked for.</summary>
    public const double GreatestShare = 0.25;

    /// <summary>Distance from the command in which the rotor counts as calm, full steps; it slips at two.</summary>
    public const double CalmFullSteps = 0.5;

    /// <summary>The time from which the rotor is to be watched for it, s; infinite where there is no bound, or not enough of one.</summary>
    public static double FromSeconds(MountSetup setup, MountAxis axis, LaneAxis ready)
    {
        AxisModel model = setup.Axis(axis);
        double after = setup.Tracks(axis) ? model.Drive.TrackingCurrentAmperes : model.Drive.HoldingCurrentAmperes;
        double speed = setup.Tracks(axis) ? SkyRates.MeanSiderealRadiansPerSecond * model.Train.TotalRatio : 0.0;
        double volts = after * ((2.0 * model.Motor.ResistanceOhms) + (2.0 * model.Drive.SupplyResistanceOhms));
        bool bounded = new WindTorque(setup.Disturbances).IsSteady && speed < model.Drive.ChangeoverRadiansPerSecond && volts < model.Drive.SupplyVolts;
        if (!bounded)
        {
            return double.PositiveInfinity;
        }

        // Dry friction holds an axis that rests, and is a load to one that tracks.
        AxisParameters p = ready.Mechanics;
        (double bearings, double rotor) = speed > 0.0 ? (p.AxisBreakaway + p.AxisCoulomb + (p.AxisViscous * speed / model.Train.TotalRatio), p.RotorCoulomb + (p.RotorViscous * speed)) : (0.0, 0.0);
        double onAxis = Outside(setup, axis, ready) + bearings;
        double loss = AxisAssembly.TotalLoss(model.Train, setup.Disturbances.ColdGreaseFactor).Driving;
        double onShaft = (onAxis * (1.0 + loss) / model.Train.TotalRatio) + rotor + model.Motor.DetentTorqueNewtonMetres;
        bool held = onShaft < GreatestShare * model.Motor.TorqueConstantNewtonMetresPerAmpere * after && onAxis < 2.0 * GreatestShare * p.Clutch;
        return held ? ready.ShaftPlan.SlewSeconds + model.Drive.CurrentFallDelaySeconds : double.PositiveInfinity;
    }

    /// <summary>Greatest torque of gravity, wind and the other axis' turning about the axis, at any pose, N m.</summary>
    private static double Outside(MountSetup setup, MountAxis axis, LaneAxis ready)
    {
        MountLoad load = setup.Load;
        MountAxis other = axis.Other();
        double rate = ready.Plan.At(other).PeakSpeed;
        double slope = Math.Abs(load.PolarInertia[1]) + Math.Abs(load.PolarInertia[2]) + (2.0 * (Math.Abs(load.PolarInertia[3]) + Math.Abs(load.PolarInertia[4])));
        double turning = axis == MountAxis.Polar ? slope * rate * ready.Plan.PolarTracking : 0.5 * slope * rate * rate;
        double gravity = (axis == MountAxis.Polar ? load.PolarGravity : load.DeclinationGravity).Sum(Math.Abs);
        return gravity + Math.Abs(new WindTorque(setup.Disturbances).At(0.0)) + turning;
    }
}
