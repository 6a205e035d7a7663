using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>Stops from full speed.</summary>
internal static class AbortStudy
{
    /// <summary>By the ramp, and by a power cut at the loosest corner: least friction, most imbalance and inertia.</summary>
    public static Abort Of(MountSetup setup, MountAxis axis, AxisSettings settings, IReadOnlyList<CheckMove> moves, Tolerances tolerances)
    {
        var loose = new ToleranceFactors(
            1.0 + tolerances.ImbalanceShare, 1.0 - tolerances.FrictionShare, 1.0 - tolerances.ColdShare, 1.0, 1.0, 1.0 + tolerances.InertiaShare, 1.0);
        MountSetup at = loose.Apply(settings.Apply(setup, axis), axis);
        double rate = settings.SlewRateRadiansPerSecond, start = setup.Axis(axis).Motion.StartRateRadiansPerSecond;
        double Help(CheckMove move, MountPose pose) => Math.Sign(move.TurnRadians) * at.Load.GravityTorque(axis, pose);
        (CheckMove Move, MountPose Pose)[] poses = [.. moves.SelectMany(move => new[] { (move, move.Start), (move, move.End) })];
        (CheckMove Move, MountPose Pose) helped = poses.MaxBy(one => Help(one.Move, one.Pose)), opposed = poses.MinBy(one => Help(one.Move, one.Pose));
        Coast Of(CheckMove move, MountPose pose) => CoastLaw.Of(at, axis, pose, rate, Help(move, pose));

        // Either shape of ramp runs at the mean of start rate and slew rate.
        return new Abort(
            0.5 * (rate + start) * settings.RampSeconds,
            settings.RampSeconds,
            Of(helped.Move, helped.Pose),
            Of(opposed.Move, opposed.Pose),
            at.Axis(axis).Train.Worm.BackDrivingEfficiencyWith(at.Disturbances.ColdGreaseFactor) <= 0.0);
    }
}
