using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Dynamics;

/// <summary>Gravity, wind and the torque that the other axis' motion puts on one axis while the other follows its plan.</summary>
/// <remarks>Signs: positive torque turns the axis towards greater angles. The step takes these from <see cref="Stepping.Lanes.LaneBlock"/>; this is for single moments.</remarks>
internal sealed class MoveLoad(MountSetup setup, MountAxis axis, MovePlan plan)
{
    private readonly MountLoad _load = setup.Load;
    private readonly MotorPlan _other = plan.At(axis.Other());
    private readonly WindTorque _wind = new(setup.Disturbances);

    /// <summary>Torque at an axis angle and time, N m.</summary>
    public double Outside(double axisRadians, double seconds)
    {
        double other = _other.Position(seconds);
        MountPose pose = axis == MountAxis.Polar ? new MountPose(axisRadians, other) : new MountPose(other, axisRadians);
        double torque = _load.GravityTorque(axis, pose) + _wind.At(seconds);
        if (axis == MountAxis.Declination)
        {
            // Centrifugal torque of the turning polar axis: half the slope of its inertia times its rate squared.
            double rate = _other.Velocity(seconds);
            torque += 0.5 * _load.PolarInertiaSlope(axisRadians) * rate * rate;
        }

        return torque;
    }
}
