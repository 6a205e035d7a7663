namespace AxisSim.Core.Motion;

/// <summary>One piece of a motion profile, cubic in time, by its state at its start.</summary>
/// <remarks>With u = t - start: <c>x = x0 + v0 u + a0 u2/2 + j u3/6</c>.</remarks>
/// <param name="StartSeconds">Start, s.</param>
/// <param name="DurationSeconds">Duration, s; above zero.</param>
/// <param name="Position">Position at its start, rad.</param>
/// <param name="Velocity">Velocity at its start, rad/s.</param>
/// <param name="Acceleration">Acceleration at its start, rad/s2.</param>
/// <param name="Jerk">Jerk throughout, rad/s3.</param>
public readonly record struct MotionSegment(
    double StartSeconds, double DurationSeconds, double Position, double Velocity, double Acceleration, double Jerk)
{
    /// <summary>State a time after the segment's start.</summary>
    public MotionSample After(double seconds) => new(
        Position + (seconds * (Velocity + (seconds * ((Acceleration / 2.0) + (seconds * Jerk / 6.0))))),
        Velocity + (seconds * (Acceleration + (seconds * Jerk / 2.0))),
        Acceleration + (seconds * Jerk));
}

/// <summary>State of a planned motion.</summary>
/// <param name="Position">Position, rad.</param>
/// <param name="Velocity">Velocity, rad/s.</param>
/// <param name="Acceleration">Acceleration, rad/s2.</param>
public readonly record struct MotionSample(double Position, double Velocity, double Acceleration);
