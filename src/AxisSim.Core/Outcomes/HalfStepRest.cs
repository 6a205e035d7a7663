namespace AxisSim.Core.Outcomes;

/// <summary>What the same move comes to at half the step: tells whether its place of rest may be believed.</summary>
/// <param name="Radians">The final rest there, as <see cref="Settling.RestRadians"/>, rad; null when the motor loses step there.</param>
public sealed record HalfStepRest(double? Radians);
