namespace AxisSim.Core.Questions;

/// <summary>How a failing move ends when one thing is changed.</summary>
/// <param name="Change">What was changed.</param>
/// <param name="Arrives">Whether the move then arrives.</param>
public sealed record ChangeResult(OneChange Change, bool Arrives);

/// <summary>Two changes that together let a failing move arrive, when no single one does.</summary>
/// <param name="First">One of them.</param>
/// <param name="Second">The other.</param>
public sealed record ChangePair(OneChange First, OneChange Second);

/// <summary>What makes a move fail.</summary>
/// <param name="Limit">What it is.</param>
/// <param name="Shares">What the plan asks of the motor at its hardest moment up to the failure, by cause.</param>
/// <param name="Changes">The re-runs with one thing changed; empty where the end itself says the cause.</param>
/// <param name="Pairs">Pairs of changes that cure, when no single one does.</param>
public sealed record LimitFinding(Limit Limit, TorqueShares Shares, IReadOnlyList<ChangeResult> Changes, IReadOnlyList<ChangePair> Pairs)
{
    /// <summary>Whether a change alone lets the move arrive.</summary>
    public bool Cures(OneChange change) => Changes.Any(result => result.Change == change && result.Arrives);
}
