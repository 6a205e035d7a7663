using AxisSim.Core.Drives;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What an angle of the rotor from its plan is as a share of what its field holds at that moment of a move (<see cref="RotorSwing"/>).</summary>
/// <remarks>The curves of torque against load angle are made for even steps of speed, each when it is first asked for; between them places lie on straight lines.</remarks>
internal sealed class SwingShare
{
    private const int Speeds = 20;
    private const double Turn = 2.0 * Math.PI;

    private readonly AxisModel _model;
    private readonly MotorPlan _plan;
    private readonly Func<double, double> _need;
    private readonly double _ratio;
    private readonly double _grain;
    private readonly double _fallSeconds;
    private readonly double _later;
    private readonly FieldHold?[][] _curves = new FieldHold?[4][];

    /// <summary>Shares in the move of one axis.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="need">Torque that the planned motion needs at the shaft at a time (s), N m.</param>
    public SwingShare(MountSetup setup, MountAxis axis, MovePlan plan, Func<double, double> need)
    {
        (_model, _plan, _need, _ratio) = (setup.Axis(axis), plan.At(axis), need, setup.Axis(axis).Train.TotalRatio);
        _grain = Math.Max(Math.Abs(_plan.PeakSpeed) * _ratio, 1e-3) / Speeds;
        _fallSeconds = _plan.SlewSeconds + _model.Drive.CurrentFallDelaySeconds;
        _later = setup.Tracks(axis) ? _model.Drive.TrackingCurrentAmperes : _model.Drive.HoldingCurrentAmperes;
        for (int i = 0; i < _curves.Length; i++)
        {
            _curves[i] = new FieldHold?[Speeds + 2];
        }
    }

    /// <summary>The share alone; not a number where the field holds nothing.</summary>
    /// <param name="angle">Rotor less plan, less what the steps of the command put the field off, electrical rad.</param>
    /// <param name="seconds">Time, s.</param>
    /// <param name="fullStepping">Whether the drive is full-stepping.</param>
    public double Of(double angle, double seconds, bool fullStepping)
    {
        (double field, double ahead, double direction, _) = Field(seconds, fullStepping);
        double off = (direction * angle) - field;
        return Math.Abs(off) / (off > 0.0 ? ahead : Turn - ahead);
    }

    /// <summary>The swing that this is; null where the field holds nothing.</summary>
    /// <param name="angle">Rotor less plan, less what the steps of the command put the field off, electrical rad.</param>
    /// <param name="seconds">Time, s.</param>
    /// <param name="fullStepping">Whether the drive is full-stepping.</param>
    public RotorSwing? At(double angle, double seconds, bool fullStepping)
    {
        (double field, double ahead, double direction, double speed) = Field(seconds, fullStepping);
        if (double.IsNaN(field))
        {
            return null;
        }

        double off = (direction * angle) - field;
        double held = off > 0.0 ? ahead : Turn - ahead;
        return new RotorSwing(Math.Abs(off) / held, direction * off, held, seconds, speed, fullStepping);
    }

    /// <summary>Load angles between which the field holds the rotor at a time (s) while it keeps to its plan, electrical rad; not numbers where it holds nothing.</summary>
    public (double From, double To) Held(double seconds)
    {
        bool fullStepping = Math.Abs(_plan.Velocity(seconds)) * _ratio > _model.Drive.ChangeoverRadiansPerSecond;
        (double field, double ahead, double direction, _) = Field(seconds, fullStepping);
        double to = field + ahead;
        return direction > 0.0 ? (to - Turn, to) : (-to, Turn - to);
    }

    /// <summary>The load angle of the field and how far ahead of it the rotor is held, in the direction of motion, electrical rad; that direction and the speed (rad/s).</summary>
    private (double Field, double Ahead, double Direction, double Speed) Field(double seconds, bool fullStepping)
    {
        double velocity = _plan.Velocity(seconds) * _ratio, speed = Math.Abs(velocity), direction = velocity < 0.0 ? -1.0 : 1.0;
        StepperMotor motor = _model.Motor;
        double friction = speed > 0.0 ? motor.CoulombTorqueNewtonMetres + (motor.ViscousNewtonMetreSecondsPerRadian * speed) : 0.0;
        double load = (direction * _need(seconds)) + friction;
        double place = Math.Min(speed / _grain, Speeds + 0.999);
        int below = (int)place;
        double share = place - below;
        FieldHold from = Curve(fullStepping, seconds > _fallSeconds, below), to = share > 0.0 ? Curve(fullStepping, seconds > _fallSeconds, below + 1) : from;
        return (
            TorqueSpeedCurves.Line(from.FieldRadians, to.FieldRadians, share),
            TorqueSpeedCurves.Line(from.Unstable(load) - from.FieldRadians, to.Unstable(load) - to.FieldRadians, share),
            direction,
            speed);
    }

    private FieldHold Curve(bool fullStepping, bool later, int index)
    {
        FieldHold?[] curves = _curves[(fullStepping ? 1 : 0) + (later ? 2 : 0)];
        return curves[index] ??= new FieldHold(_model.Motor, _model.Drive, later ? _later : _model.Drive.SlewCurrentAmperes, fullStepping, index * _grain);
    }
}
