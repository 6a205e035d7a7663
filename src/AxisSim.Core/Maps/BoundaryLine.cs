namespace AxisSim.Core.Maps;

/// <summary>A point of a boundary, in the units of the map's keys.</summary>
/// <param name="X">Along the first key.</param>
/// <param name="Y">Along the second key.</param>
public readonly record struct BoundaryPoint(double X, double Y);

/// <summary>One connected piece of a boundary. What is inside lies to the left of its direction (X to the right, Y upwards).</summary>
/// <param name="Points">Its points in order; a closed line does not repeat its first one.</param>
/// <param name="Closed">Whether it returns to its start; otherwise both ends lie on the outer edge of the map.</param>
public sealed record BoundaryLine(IReadOnlyList<BoundaryPoint> Points, bool Closed);
