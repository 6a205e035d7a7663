using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Batches;

/// <summary>What one case of a batch came to. A figure that was not asked for, or does not exist, is NaN.</summary>
/// <param name="End">How it ended.</param>
/// <param name="FailureSeconds">When it was certain that sync is lost for good (three full steps behind or ahead) or that the clutch slips, s; by blocks of 16 steps.</param>
/// <param name="SlewSeconds">Planned duration of the slew, s.</param>
/// <param name="SettleSeconds">Time from the end of the slew until the payload stays within the tolerance of its rest, s.</param>
/// <param name="ContinuousCelsius">The hottest winding temperature after slewing, tracking or holding without end, degrees Celsius.</param>
public readonly record struct BatchResult(MoveEnd End, double FailureSeconds, double SlewSeconds, double SettleSeconds, double ContinuousCelsius);
