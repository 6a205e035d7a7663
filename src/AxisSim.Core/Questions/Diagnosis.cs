namespace AxisSim.Core.Questions;

/// <summary>Cause and cures of a move that fails.</summary>
/// <param name="Why">What makes it fail.</param>
/// <param name="Cures">What would cure it.</param>
public sealed record Diagnosis(LimitFinding Why, Cures Cures);
