namespace AxisSim.Core.Recommendations;

/// <summary>What one quantity does to the load factor, all others as in the scenario.</summary>
/// <param name="Kind">The quantity.</param>
/// <param name="Lower">Load factor with it at the lower end of its range.</param>
/// <param name="Upper">Load factor with it at the upper end.</param>
public readonly record struct ToleranceEffect(ToleranceKind Kind, double Lower, double Upper);
