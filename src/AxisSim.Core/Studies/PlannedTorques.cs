using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What the planned motion of an axis needs at its motor's shaft, and what the motor has at that speed, by time.</summary>
/// <remarks>
/// The need has the swings of the axis on its springs while it slews and twice as long and ten seconds after; then it is quasi-static. It is asked some hundred thousand times a run, so it is
/// run once, and lies on straight lines between its steps; what the motor has, the least of its pull-out torque, is a chain of straight lines over the speeds of the curves.
/// After the current has fallen the motor has less, by the ratio of the closed forms at both currents.
/// </remarks>
internal sealed class PlannedTorques
{
    private const double SwingsAfterSlews = 2.0;
    private const double SwingsAfterSeconds = 10.0;

    private readonly ShaftNeed _still;
    private readonly MotorPlan _plan;
    private readonly double _ratio;
    private readonly TorqueSpeedCurves _curves;
    private readonly double _first;
    private readonly double[] _need;
    private readonly double _fallSeconds;
    private readonly AxisModel _slewing;
    private readonly AxisModel _after;
    private (double Speed, double Share) _fallen = (double.NaN, 0.0);

    public PlannedTorques(MountSetup setup, MountAxis axis, MovePlan plan, TorqueSpeedCurves curves)
    {
        _still = new ShaftNeed(setup, axis, plan);
        (_plan, _ratio) = (plan.At(axis), setup.Axis(axis).Train.TotalRatio);
        _curves = curves;
        double end = Math.Min(plan.EndSeconds, ((1.0 + SwingsAfterSlews) * plan.SlewSeconds) + SwingsAfterSeconds);
        var need = new List<double>();
        double last = 0.0;
        foreach (NeedPoint point in new NeedRun(setup, axis, plan).Until(end))
        {
            _first = need.Count == 0 ? point.TimeSeconds : _first;
            last = point.TimeSeconds;
            need.Add(point.TorqueNewtonMetres);
        }

        _need = [.. need];
        SmoothSeconds = need.Count > 1 ? (last - _first) / (need.Count - 1) : double.PositiveInfinity;
        _slewing = setup.Axis(axis);
        _fallSeconds = plan.At(axis).SlewSeconds + _slewing.Drive.CurrentFallDelaySeconds;
        _after = _slewing with { Drive = _slewing.Drive with { SlewCurrentAmperes = setup.Tracks(axis) ? _slewing.Drive.TrackingCurrentAmperes : _slewing.Drive.HoldingCurrentAmperes } };
    }

    /// <summary>Within that time the torques have at most a corner or a jump, s.</summary>
    public double SmoothSeconds { get; }

    /// <summary>Needed and available torque at a time, N m.</summary>
    public (double Needed, double Available) At(double seconds)
    {
        double speed = Math.Abs(_plan.Velocity(seconds)) * _ratio;
        double slewing = _curves.At(speed > _curves.ChangeoverRadiansPerSecond, speed).LeastNewtonMetres;
        return (Need(seconds), seconds > _fallSeconds ? slewing * Fallen(speed) : slewing);
    }

    /// <summary>Share of the torque that is left; it is asked at one speed again and again.</summary>
    private double Fallen(double speed)
    {
        if (_fallen.Speed != speed)
        {
            double before = ClosedForm(_slewing, speed);
            _fallen = (speed, before > 0.0 ? Math.Max(0.0, ClosedForm(_after, speed) / before) : 0.0);
        }

        return _fallen.Share;
    }

    private double ClosedForm(AxisModel model, double speed) => PullOutLaw.OnDrive(model.Motor, model.Drive, speed > _curves.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, speed);

    /// <summary>Needed torque at a time, N m.</summary>
    public double Need(double seconds)
    {
        double place = (seconds - _first) / SmoothSeconds;
        if (place >= _need.Length - 1 || double.IsNaN(place))
        {
            return _still.At(seconds).Torque;
        }

        int below = (int)Math.Max(0.0, place);
        return TorqueSpeedCurves.Line(_need[below], _need[below + 1], Math.Max(0.0, place) - below);
    }
}
