using AxisSim.Core.Sky;

namespace AxisSim.Core.Mount;

/// <summary>The move of both axes: from where, to where, and how it is judged.</summary>
public sealed record MoveSettings
{
    /// <summary>The longest planned move that a scenario may ask for, s: a day. Longer ones are slips of a rate or an acceleration.</summary>
    public const double LongestPlanSeconds = 86400.0;

    /// <summary>Mechanical angles at the start.</summary>
    public required MountPose Start { get; init; }

    /// <summary>Mechanical angles of the target at the start of the move; with tracking the target drifts on from there.</summary>
    public required MountPose End { get; init; }

    /// <summary>What follows.</summary>
    public FollowUp FollowUp { get; init; } = FollowUp.Rest;

    /// <summary>Time simulated after the end of the slew, s.</summary>
    public double ObserveSeconds { get; init; } = 8.0;

    /// <summary>The axis is settled once it stays within plus and minus this angle, rad.</summary>
    public required double SettleToleranceRadians { get; init; }

    /// <summary>The angle that an axis turns in the move, rad; without sign and without tracking.</summary>
    public double Distance(MountAxis axis) =>
        Math.Abs(axis == MountAxis.Polar ? End.PolarRadians - Start.PolarRadians : End.DeclinationRadians - Start.DeclinationRadians);
}
