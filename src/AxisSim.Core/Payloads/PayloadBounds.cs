using AxisSim.Core.Bounds;

namespace AxisSim.Core.Payloads;

/// <summary>What the figures of bodies, counterweight and lumped loads may be.</summary>
public static class PayloadBounds
{
    /// <summary>Mass of a body, or of the weights; a counterweight made in code may also have none, which leaves its bar.</summary>
    public static Bound Mass { get; } = Bound.Above(0, 5000, "kg");

    /// <summary>Centre of mass of a body along the declination axis.</summary>
    public static Bound Out { get; } = Bound.From(-10, 10, "m");

    /// <summary>Centre of mass of a body along or across the optical axis.</summary>
    public static Bound Offset { get; } = Bound.From(-20, 20, "m");

    /// <summary>Length of a body.</summary>
    public static Bound Length { get; } = Bound.Above(0, 20, "m");

    /// <summary>Outer diameter, width or height of a body.</summary>
    public static Bound Across { get; } = Bound.Above(0, 10, "m");

    /// <summary>Inner diameter of a tube; below the outer one too.</summary>
    public static Bound InnerDiameter { get; } = Bound.From(0, 10, "m");

    /// <summary>Distance of the weights from the polar axis, and the greatest that the bar allows.</summary>
    public static Bound Distance { get; } = Bound.Above(0, 10, "m");

    /// <summary>Diameter or length of the weights.</summary>
    public static Bound WeightSize { get; } = Bound.From(0, 5, "m");

    /// <summary>Mass of the bar.</summary>
    public static Bound BarMass { get; } = Bound.From(0, 1000, "kg");

    /// <summary>Length of the bar.</summary>
    public static Bound BarLength { get; } = Bound.From(0, 10, "m");

    /// <summary>Lumped inertia about an axis.</summary>
    public static Bound LumpedInertia { get; } = Bound.Above(0, 1e5, "kg m2");

    /// <summary>Lumped imbalance as if the axis were horizontal.</summary>
    public static Bound LumpedImbalance { get; } = Bound.From(-1e4, 1e4, "N m");

    /// <summary>Phase of a lumped imbalance: up to a turn either way.</summary>
    public static Bound LumpedPhase { get; } = Bound.From(-2.0 * Math.PI, 2.0 * Math.PI, "rad");
}
