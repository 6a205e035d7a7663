namespace AxisSim.Core.Mount;

/// <summary>A ramp as it is commanded: by the time that it takes or by its greatest acceleration, never both; what is not given follows from the slew rate.</summary>
/// <remarks>Two ramps are equal when they are given alike; <see cref="AxisMotion.RampInUseSeconds"/> and <see cref="AxisMotion.PeakAcceleration"/> compare what they come to.</remarks>
public readonly record struct Ramp
{
    private readonly double _value;
    private readonly bool _byAcceleration;

    private Ramp(double value, bool byAcceleration) => (_value, _byAcceleration) = (value, byAcceleration);

    /// <summary>Time from the start rate to the slew rate, s; null when the ramp is given by its acceleration.</summary>
    public double? Seconds => _byAcceleration ? null : _value;

    /// <summary>Greatest acceleration at the axis, rad/s2; null when the ramp is given by its time.</summary>
    public double? RadiansPerSecondSquared => _byAcceleration ? _value : null;

    /// <summary>A ramp that takes a time whatever the slew rate, s.</summary>
    public static Ramp OfSeconds(double seconds) => new(seconds, byAcceleration: false);

    /// <summary>A ramp with a greatest acceleration at the axis whatever the slew rate, rad/s2.</summary>
    public static Ramp OfAcceleration(double radiansPerSecondSquared) => new(radiansPerSecondSquared, byAcceleration: true);
}
