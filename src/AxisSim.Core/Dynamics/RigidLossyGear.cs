using AxisSim.Core.Gearing;

namespace AxisSim.Core.Dynamics;

/// <summary>A change of a rigid lossy gear between turning and sticking.</summary>
/// <param name="TimeSeconds">When, interpolated inside the step, s.</param>
/// <param name="OutputRadians">Output angle then, rad.</param>
/// <param name="Direction">New direction of motion: +1, -1, or 0 when it sticks.</param>
internal readonly record struct GearEvent(double TimeSeconds, double OutputRadians, int Direction);

/// <summary>Two inertias coupled by a rigid gear with the mesh loss of <see cref="MeshLoss"/>: one degree of freedom.</summary>
/// <remarks>
/// Law: <c>n J1 a = t1 - g t</c>, <c>J2 a = t2 + n t</c>; a output acceleration, t gear torque at the input, g the ratio of input torque to t, which depends on
/// the direction of motion and the sign of t. At rest it stays stuck unless it would accelerate in a direction with that direction's own g.
/// </remarks>
internal struct RigidLossyGear(double inputInertia, double outputInertia, double ratio, MeshLoss loss)
{
    private int _direction;
    private double _tendencyPositive = double.NaN;
    private double _tendencyNegative = double.NaN;
    private double _tendencySeconds;

    public double OutputRadians { get; private set; }

    public double OutputSpeed { get; private set; }

    /// <summary>One step; returns an event if one happened in it.</summary>
    public GearEvent? Step(double startSeconds, double h, double inputTorqueMid, double outputTorqueMid)
    {
        double mid = startSeconds + (0.5 * h);
        if (_direction == 0)
        {
            return FromRest(startSeconds, h, mid, inputTorqueMid, outputTorqueMid);
        }

        double before = OutputSpeed;
        double after = before + (h * Acceleration(_direction, inputTorqueMid, outputTorqueMid));
        if (after * _direction > 0.0)
        {
            OutputRadians += 0.5 * h * (before + after);
            OutputSpeed = after;
            return null;
        }

        double fraction = before / (before - after);
        double time = startSeconds + (fraction * h);
        OutputRadians += 0.5 * fraction * h * before;
        OutputSpeed = 0.0;
        _direction = 0;
        (_tendencyPositive, _tendencyNegative, _tendencySeconds) = (double.NaN, double.NaN, time);
        var stop = new GearEvent(time, OutputRadians, 0);
        GearEvent? onward = FromRest(time, startSeconds + h - time, mid, inputTorqueMid, outputTorqueMid);
        return onward ?? stop;
    }

    private GearEvent? FromRest(double startSeconds, double h, double mid, double inputTorque, double outputTorque)
    {
        double positive = Acceleration(1, inputTorque, outputTorque);
        double negative = Acceleration(-1, inputTorque, outputTorque);
        int direction = positive > 0.0 ? 1 : negative < 0.0 ? -1 : 0;
        double now = direction > 0 ? positive : negative;
        double before = direction > 0 ? _tendencyPositive : _tendencyNegative;
        double time = double.IsNaN(before) ? startSeconds : mid - ((mid - _tendencySeconds) * now / (now - before));
        (_tendencyPositive, _tendencyNegative, _tendencySeconds) = (positive, negative, mid);
        if (direction == 0)
        {
            return null;
        }

        // It moves from the interpolated time on; the acceleration grows from zero there.
        double end = startSeconds + h;
        double span = Math.Max(0.0, end - time);
        double slope = mid > time ? now / (mid - time) : 0.0;
        OutputSpeed = double.IsNaN(before) ? now * h : 0.5 * slope * span * span;
        OutputRadians += double.IsNaN(before) ? 0.5 * now * h * h : slope * span * span * span / 6.0;
        _direction = direction;
        return new GearEvent(time, OutputRadians, direction);
    }

    private readonly double Acceleration(int direction, double inputTorque, double outputTorque)
    {
        double a = WithGain(loss.InputTorque(1.0, direction), inputTorque, outputTorque, out double gearTorque);
        return gearTorque >= 0.0 ? a : WithGain(-loss.InputTorque(-1.0, direction), inputTorque, outputTorque, out _);
    }

    private readonly double WithGain(double gain, double inputTorque, double outputTorque, out double gearTorque)
    {
        double a = (inputTorque + (gain * outputTorque / ratio)) / ((ratio * inputInertia) + (gain * outputInertia / ratio));
        gearTorque = ((outputInertia * a) - outputTorque) / ratio;
        return a;
    }
}
