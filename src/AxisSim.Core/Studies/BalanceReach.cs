using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Imbalance about one axis in one pose.</summary>
/// <param name="Pose">Mechanical angles, rad.</param>
/// <param name="NewtonMetres">Size of the torque, N m.</param>
public readonly record struct PoseImbalance(MountPose Pose, double NewtonMetres);

/// <summary>The greatest imbalance about one axis among the poses that matter: those of the move, and those that point at the sky.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="OnMove">Greatest on the way of the move.</param>
/// <param name="InSky">Greatest with the telescope pointing above the horizon, on either side of the pier.</param>
public sealed record ReachedImbalance(MountAxis Axis, PoseImbalance OnMove, PoseImbalance InSky)
{
    /// <summary>The greater of both.</summary>
    public PoseImbalance Worst => OnMove.NewtonMetres > InSky.NewtonMetres ? OnMove : InSky;
}

/// <summary>Finds the worst pose among those that a mount is brought to.</summary>
/// <remarks>A pose that points into the ground may be worse; nobody observes there, and no hand can feel it in use.</remarks>
public static class BalanceReach
{
    // A torque that changes as a sine of each angle is met within 0.1 % at steps of 2.5 deg (cos 1.25 deg twice).
    private const int SkySteps = 144;

    private const int MovePlaces = 400;

    // Torques that differ by less are equal: of equal ones the highest in the sky is told.
    private const double Equal = 1e-6;

    /// <summary>The worst poses of an axis.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="latitudeRadians">Latitude, rad; negative south.</param>
    /// <param name="axis">The axis.</param>
    public static ReachedImbalance Of(MountSetup setup, double latitudeRadians, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return new ReachedImbalance(axis, Worst(setup, axis, Way(setup), latitudeRadians), Worst(setup, axis, Sky(latitudeRadians), latitudeRadians));
    }

    /// <summary>Poses on the way of the move, evenly spaced in time.</summary>
    public static IReadOnlyList<MountPose> Way(MountSetup setup)
    {
        var plan = new MovePlan(setup);
        return [.. Enumerable.Range(0, MovePlaces + 1).Select(i => plan.Pose(plan.SlewSeconds * i / MovePlaces))];
    }

    private static IEnumerable<MountPose> Sky(double latitude) =>
        from i in Enumerable.Range(0, SkySteps)
        from j in Enumerable.Range(0, SkySteps)
        let pose = new MountPose((2.0 * Math.PI * i / SkySteps) - Math.PI, (2.0 * Math.PI * j / SkySteps) - Math.PI)
        where SkyPose.SineOfAltitude(pose, latitude) > 0.0
        select pose;

    private static PoseImbalance Worst(MountSetup setup, MountAxis axis, IEnumerable<MountPose> poses, double latitude)
    {
        PoseImbalance best = new(default, -1.0);
        double height = 0.0;
        foreach (MountPose pose in poses)
        {
            double here = SkyPose.SineOfAltitude(pose, latitude), torque = Math.Abs(setup.Load.GravityTorque(axis, pose));
            if (torque > best.NewtonMetres + Equal || (torque > best.NewtonMetres - Equal && here > height))
            {
                (best, height) = (new(pose, torque), here);
            }
        }

        return best;
    }
}
