namespace AxisSim.Plots.Pictures;

/// <summary>A measured point: how much was asked for, and what it cost.</summary>
/// <param name="Size">What was asked for.</param>
/// <param name="Cost">What it cost.</param>
public sealed record GrowthPoint(double Size, double Cost);

/// <summary>One panel of growth.</summary>
/// <param name="Heading">Heading: "Run time of a map".</param>
/// <param name="SizeTitle">Title of the horizontal axis, with its unit: "Cells, 1".</param>
/// <param name="CostTitle">Title of the vertical axis, with its unit: "Run time, s".</param>
/// <param name="Points">Measured points; those that are not positive cannot be on logarithmic axes and are left out.</param>
public sealed record GrowthCurve(string Heading, string SizeTitle, string CostTitle, IReadOnlyList<GrowthPoint> Points);
