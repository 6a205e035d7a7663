namespace AxisSim.Core.Dynamics;

/// <summary>Mechanical state of one axis: rotor, worm shaft (when the stages before it are elastic), axis, clutch, payload.</summary>
/// <remarks>Angles rad, speeds rad/s. Each speed is kept with that of one step before, to extrapolate it to the middle of a step.</remarks>
internal struct AxisState
{
    public double Rotor;
    public double RotorSpeed;
    public double RotorSpeedBefore;
    public double Shaft;
    public double ShaftSpeed;
    public double ShaftSpeedBefore;
    public double Axis;
    public double AxisSpeed;
    public double AxisSpeedBefore;
    public double Slip;
    public double Payload;
    public double PayloadSpeed;
    public double PayloadSpeedBefore;

    /// <summary>Sets the speeds of one step before to the present ones (a start, or after a change of state from outside).</summary>
    public void Restart() =>
        (RotorSpeedBefore, ShaftSpeedBefore, AxisSpeedBefore, PayloadSpeedBefore) = (RotorSpeed, ShaftSpeed, AxisSpeed, PayloadSpeed);

    public readonly bool IsFinite => double.IsFinite(Rotor + RotorSpeed + Shaft + ShaftSpeed + Axis + AxisSpeed + Slip + Payload + PayloadSpeed);

    /// <summary>Name of the first quantity that is not finite (speeds first, for they drive the angles); null when all are.</summary>
    public readonly string? FirstNotFinite() =>
        !double.IsFinite(RotorSpeed) ? "rotor speed"
        : !double.IsFinite(ShaftSpeed) ? "worm shaft speed"
        : !double.IsFinite(AxisSpeed) ? "axis speed"
        : !double.IsFinite(PayloadSpeed) ? "payload speed"
        : !double.IsFinite(Rotor) ? "rotor angle"
        : !double.IsFinite(Shaft) ? "worm shaft angle"
        : !double.IsFinite(Axis) ? "axis angle"
        : !double.IsFinite(Slip) ? "clutch slip"
        : !double.IsFinite(Payload) ? "payload angle"
        : null;
}
