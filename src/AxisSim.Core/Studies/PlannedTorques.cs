using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What the planned motion of an axis needs at its motor's shaft, and what the motor has at that speed, by time.</summary>
/// <remarks>After the current has fallen the motor has less, by the ratio of the closed forms at both currents. It is asked some ten thousand times a run. What the motor has is a chain of straight lines over the speeds of the curves, so it is looked up once at each of them.</remarks>
internal sealed class PlannedTorques
{
    private readonly ShaftNeed _need;
    private readonly double _changeover;
    private readonly double[] _speeds;
    private readonly double[] _micro;
    private readonly double[] _full;
    private readonly double _fallSeconds;
    private readonly AxisModel _slewing;
    private readonly AxisModel _after;

    public PlannedTorques(MountSetup setup, MountAxis axis, MovePlan plan, TorqueSpeedCurves curves)
    {
        _need = new ShaftNeed(setup, axis, plan);
        _changeover = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        _slewing = setup.Axis(axis);
        _fallSeconds = plan.At(axis).SlewSeconds + _slewing.Drive.CurrentFallDelaySeconds;
        _after = _slewing with { Drive = _slewing.Drive with { SlewCurrentAmperes = setup.Tracks(axis) ? _slewing.Drive.TrackingCurrentAmperes : _slewing.Drive.HoldingCurrentAmperes } };
        _speeds = [.. curves.SpeedsRadiansPerSecond];
        _micro = [.. _speeds.Select(speed => CurveStudy.Available(curves, fullStepping: false, speed))];
        _full = [.. _speeds.Select(speed => CurveStudy.Available(curves, fullStepping: true, speed))];
    }

    /// <summary>Needed and available torque at a time, N m.</summary>
    public (double Needed, double Available) At(double seconds)
    {
        (double signed, double torque) = _need.At(seconds);
        double speed = Math.Abs(signed);
        double slewing = Between(speed > _changeover ? _full : _micro, speed);
        return (torque, seconds > _fallSeconds ? slewing * Fallen(speed) : slewing);
    }

    private double Fallen(double speed)
    {
        double before = ClosedForm(_slewing, speed);
        return before > 0.0 ? Math.Max(0.0, ClosedForm(_after, speed) / before) : 0.0;
    }

    private double ClosedForm(AxisModel model, double speed) => PullOutLaw.OnDrive(model.Motor, model.Drive, speed > _changeover, model.Drive.SupplyVolts, speed);

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
