using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A warning when an axis came to its rest only at the end of the watch: it may be moving still.</summary>
internal static class LateText
{
    // The level of rest is taken from the last instants of the run; what settles after this share of the watch may be on its way still.
    private const double LateShare = 0.9;

    /// <summary>A watch twice as long, for an axis that settles late; whoever tells it has run it first.</summary>
    public static IReadOnlyList<CureAdvice> Candidates(MoveSettings move, AxisOutcome outcome) =>
        Late(move, outcome) ? [new("Watch for longer: it settles then as well.", [$"move.observe={Say.Number(Math.Ceiling(2.0 * move.ObserveSeconds))} s"])] : [];

    /// <summary>Writes the warning, where there is one to give.</summary>
    public static void Write(Page page, MoveSettings move, AxisOutcome outcome, AxisAdvice advice)
    {
        if (!Late(move, outcome))
        {
            return;
        }

        string start = $"That is at the very end of the {Units.Time(move.ObserveSeconds)} watched, so it may be creeping still.";
        if (advice.Watches.Count == 0)
        {
            page.Text($"{start} And it is: watched for twice as long, it does not settle within its tolerance. Do not rely on it.");
            return;
        }

        page.Text($"{start} Watched for longer it settles as well; see when:");
        CureText.Items(page, advice.Watches);
    }

    private static bool Late(MoveSettings move, AxisOutcome outcome) =>
        outcome.Verdict == MoveEnd.Arrives && outcome.Settling?.AgainstRestSeconds > LateShare * move.ObserveSeconds;
}
