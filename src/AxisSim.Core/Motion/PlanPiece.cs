namespace AxisSim.Core.Motion;

/// <summary>One piece of a <see cref="MotorPlan"/>: position <c>P + s (V + s (A/2 + s J/6))</c>, s time since its start.</summary>
/// <param name="Start">Start, s.</param>
/// <param name="Position">P, rad.</param>
/// <param name="Velocity">V, rad/s.</param>
/// <param name="HalfAcceleration">A/2, rad/s2.</param>
/// <param name="SixthJerk">J/6, rad/s3.</param>
internal readonly record struct PlanPiece(double Start, double Position, double Velocity, double HalfAcceleration, double SixthJerk)
{
    /// <summary>Start of the next piece, s; infinite for the last.</summary>
    public double End { get; init; } = double.PositiveInfinity;
}
