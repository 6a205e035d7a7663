using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount;

/// <summary>What the figures of <see cref="MoveSettings"/> may be.</summary>
public static class MoveBounds
{
    /// <summary>Mechanical angle of an axis at either end: up to a turn either way.</summary>
    public static Bound Angle { get; } = Bound.From(-2.0 * Math.PI, 2.0 * Math.PI, "rad");

    /// <summary>Time simulated after the slew.</summary>
    public static Bound Observe { get; } = Bound.Above(0, 3600, "s");

    /// <summary>Settling tolerance: up to one degree.</summary>
    public static Bound SettleTolerance { get; } = Bound.Above(0, Math.PI / 180.0, "rad");
}
