using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What the planned motion of an axis needs at its motor's shaft, and what the motor has at that speed, by time.</summary>
/// <remarks>It is asked some ten thousand times a run. What the motor has is a chain of straight lines over the speeds of the curves, so it is looked up once at each of them.</remarks>
internal sealed class PlannedTorques
{
    private readonly ShaftNeed _need;
    private readonly double _changeover;
    private readonly double[] _speeds;
    private readonly double[] _micro;
    private readonly double[] _full;

    public PlannedTorques(MountSetup setup, MountAxis axis, MovePlan plan, TorqueSpeedCurves curves)
    {
        _need = new ShaftNeed(setup, axis, plan);
        _changeover = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        _speeds = [.. curves.SpeedsRadiansPerSecond];
        _micro = [.. _speeds.Select(speed => CurveStudy.Available(curves, fullStepping: false, speed))];
        _full = [.. _speeds.Select(speed => CurveStudy.Available(curves, fullStepping: true, speed))];
    }

    /// <summary>Needed and available torque at a time, N m.</summary>
    public (double Needed, double Available) At(double seconds)
    {
        (double signed, double torque) = _need.At(seconds);
        double speed = Math.Abs(signed);
        return (torque, Between(speed > _changeover ? _full : _micro, speed));
    }

    private double Between(double[] torques, double speed)
    {
        int found = Array.BinarySearch(_speeds, speed);
        int after = found < 0 ? ~found : found;
        if (found >= 0 || after == 0 || after == _speeds.Length)
        {
            return torques[Math.Min(after, _speeds.Length - 1)];
        }

        double share = (_speeds[after] - speed) / (_speeds[after] - _speeds[after - 1]);
        return (share * torques[after - 1]) + ((1.0 - share) * torques[after]);
    }
}
