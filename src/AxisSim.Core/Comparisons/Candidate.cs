using AxisSim.Core.Motors;

namespace AxisSim.Core.Comparisons;

/// <summary>A motor that may be bought.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Frame">Frame size or other remark; may be empty.</param>
/// <param name="Motor">Its figures as wired.</param>
/// <param name="VoltageLossVolts">Voltage lost between supply and winding, V, as a fit to a measured curve found it; 0 when none is known.</param>
public sealed record MotorChoice(string Name, string Frame, StepperMotor Motor, double VoltageLossVolts = 0.0);

/// <summary>A motor on a total reduction and a supply.</summary>
/// <param name="Motor">The motor.</param>
/// <param name="TotalReduction">Motor revolutions per axis revolution; null keeps that of each axis.</param>
/// <param name="SupplyVolts">Supply voltage, V; null keeps that of each axis.</param>
public sealed record Candidate(MotorChoice Motor, double? TotalReduction, double? SupplyVolts);
