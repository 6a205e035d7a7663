using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount;

/// <summary>What the figures of <see cref="AxisBearings"/>, <see cref="FlexiblePayload"/> and <see cref="AxisMotion"/> may be.</summary>
public static class AxisBounds
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>Dry friction of bearings and seals, while turning and from rest.</summary>
    public static Bound Coulomb { get; } = Bound.From(0, 1000, "N m");

    /// <summary>Viscous friction of the axis.</summary>
    public static Bound Viscous { get; } = Bound.From(0, 1e5, "N m s/rad");

    /// <summary>Counts of an encoder on the axis.</summary>
    public static Bound EncoderCounts { get; } = Bound.Whole(0, 1e9);

    /// <summary>Frequency of the flexible part of the payload.</summary>
    public static Bound FlexibleFrequency { get; } = Bound.From(0.1, 1000, "Hz");

    /// <summary>Damping ratio of that mode.</summary>
    public static Bound FlexibleDamping { get; } = Bound.From(0, 1);

    /// <summary>Share of the axis' inertia that is on the spring.</summary>
    public static Bound FlexibleShare { get; } = Bound.From(0.001, 0.999);

    /// <summary>Slew rate: up to 90 degrees a second.</summary>
    public static Bound SlewRate { get; } = Bound.Above(0, 90 * Degree, "rad/s");

    /// <summary>Ramp given by its time.</summary>
    public static Bound RampTime { get; } = Bound.Above(0, 600, "s");

    /// <summary>Ramp given by its acceleration: up to 1000 degrees per second squared.</summary>
    public static Bound Acceleration { get; } = Bound.Above(0, 1000 * Degree, "rad/s2");

    /// <summary>Share of an S-curve's ramp over which the acceleration rises.</summary>
    public static Bound JerkShare { get; } = Bound.Above(0, 0.5);

    /// <summary>Rate without a ramp; at most the slew rate too.</summary>
    public static Bound StartRate { get; } = Bound.From(0, double.PositiveInfinity, "rad/s");
}
