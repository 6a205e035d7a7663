using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount;

/// <summary>What the figures of <see cref="Disturbances"/> may be.</summary>
public static class DisturbanceBounds
{
    /// <summary>Steady wind, and what a gust adds.</summary>
    public static Bound Wind { get; } = Bound.From(-100, 100, "m/s");

    /// <summary>Start of the gust.</summary>
    public static Bound GustStart { get; } = Bound.From(0, 1e5, "s");

    /// <summary>Duration of the gust.</summary>
    public static Bound GustDuration { get; } = Bound.Above(0, 1e4, "s");

    /// <summary>Turbulence: standard deviation over mean speed.</summary>
    public static Bound Turbulence { get; } = Bound.From(0, 1);

    /// <summary>Length scale of the turbulence.</summary>
    public static Bound TurbulenceLength { get; } = Bound.Above(0, 1e4, "m");

    /// <summary>Seed of the turbulence.</summary>
    public static Bound TurbulenceSeed { get; } = Bound.Whole(0, 1e9);

    /// <summary>Air density.</summary>
    public static Bound AirDensity { get; } = Bound.From(0, 2, "kg/m3");

    /// <summary>Drag coefficient.</summary>
    public static Bound DragCoefficient { get; } = Bound.From(0, 5);

    /// <summary>Area that the wind meets.</summary>
    public static Bound Area { get; } = Bound.From(0, 100, "m2");

    /// <summary>Lever of the wind's force.</summary>
    public static Bound Lever { get; } = Bound.From(-20, 20, "m");

    /// <summary>Factor on friction for cold grease.</summary>
    public static Bound ColdGrease { get; } = Bound.From(0.1, 20);

    /// <summary>Ambient temperature.</summary>
    public static Bound Ambient { get; } = Bound.From(-80, 80, "degrees Celsius");
}
