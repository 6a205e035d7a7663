namespace AxisSim.Core.Motion;

/// <summary>A motion profile in the making: phases strung together from position 0 and a first velocity, in the positive direction.</summary>
internal sealed class ProfileSketch(double firstVelocity)
{
    private readonly List<MotionSegment> segments = [];
    private double time;
    private double position;
    private double velocity = firstVelocity;

    /// <summary>Appends a phase; one of no duration vanishes.</summary>
    public void Add(double durationSeconds, double acceleration, double jerk, bool onlyIf = true)
    {
        if (!onlyIf || !(durationSeconds > 0.0))
        {
            return;
        }

        MotionSegment segment = new(time, durationSeconds, position, velocity, acceleration, jerk);
        segments.Add(segment);
        MotionSample end = segment.After(durationSeconds);
        time += durationSeconds;
        (position, velocity) = (end.Position, end.Velocity);
    }

    /// <summary>The phases times a sign (1 or -1), which is exact.</summary>
    public MotionSegment[] ToSegments(double sign) =>
    [
        .. segments.Select(s => s with
        {
            Position = sign * s.Position,
            Velocity = sign * s.Velocity,
            Acceleration = sign * s.Acceleration,
            Jerk = sign * s.Jerk,
        }),
    ];
}
