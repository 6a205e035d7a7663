using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Curves;

/// <summary>The pull-out curves of one axis.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="TotalReduction">Motor revolutions per axis revolution.</param>
/// <param name="Curves">Curves, bands and path.</param>
internal sealed record CurveReport(MountAxis Axis, double TotalReduction, TorqueSpeedCurves Curves);
