using AxisSim.Core.Comparisons;

namespace AxisSim.Plots.Pictures;

/// <summary>One candidate of a comparison, ready to be drawn.</summary>
/// <param name="Label">What it is, with its setting.</param>
/// <param name="Curve">Its torque against the rate of the axis.</param>
public sealed record ComparisonCurve(string Label, CandidateCurve Curve);
