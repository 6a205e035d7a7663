using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>The verdict in a sentence, for the mount and for each axis.</summary>
internal static class VerdictText
{
    /// <summary>Verdict on all simulated axes together.</summary>
    public static string OfMount(IReadOnlyList<AxisResult> results)
    {
        AxisResult? broken = results.FirstOrDefault(result => result.Outcome.Verdict == MoveEnd.Broken);
        if (broken is not null)
        {
            return BrokenText.Verdict(broken.Outcome.Axis);
        }

        List<AxisOutcome> failed = [.. results.Select(result => result.Outcome).Where(outcome => outcome.Verdict != MoveEnd.Arrives)];
        if (failed.Count == 0)
        {
            double settled = results.Max(result => result.Outcome.Settling?.AgainstRestSeconds ?? 0.0);
            string who = results.Count > 1 ? "the mount arrives and settles on both axes" : $"the {results[0].Outcome.Axis.Words()} arrives and settles";
            string slew = results.Count > 1 ? "a slew" : "the mount's slew";
            return $"ARRIVES: {who}, {(settled > 0.0 ? Units.Time(settled) : "at once")} after {slew} of {Units.Time(results[0].Outcome.SlewSeconds)}{OffTarget(results)}.";
        }

        string verdict = failed.Exists(outcome => outcome.Verdict == MoveEnd.Stalls) ? "STALLS"
            : failed.Exists(outcome => outcome.Verdict == MoveEnd.ClutchSlips) ? "CLUTCH SLIPS" : "DOES NOT SETTLE";
        return $"{verdict}: {Say.List([.. failed.Select(Short)])}.";
    }

    /// <summary>Verdict on one axis.</summary>
    public static string OfAxis(AxisResult result)
    {
        AxisOutcome outcome = result.Outcome;
        if (result.Broken is { } broken)
        {
            return BrokenText.Of(outcome, broken);
        }

        string axis = Say.Sentence(outcome.Axis.Words());
        return outcome.Verdict switch
        {
            MoveEnd.Arrives => $"{axis} arrives: the motor keeps step through the whole slew, and {(outcome.Settling?.AgainstRestSeconds is > 0.0 and var rest ? $"from {Units.Time(rest)} after it" : "from its end on")} the axis stays within {Units.SmallAngle(Tolerance(outcome))} of where it comes to rest.{Beside(outcome)}",
            MoveEnd.Stalls when outcome.Loss is { } loss => $"{axis} stalls: the motor loses step {Units.Time(loss.TimeSeconds)} after the start, {During(loss)}, at {Units.Rate(Math.Abs(loss.AxisRateRadiansPerSecond))} ({Units.Speed(Math.Abs(loss.MotorSpeedRadiansPerSecond))} at the motor), {(loss.FullStepping ? "while the drive is full-stepping" : "while the drive is microstepping")}.",
            MoveEnd.ClutchSlips => $"{axis} slips in its clutch: it begins to give way {Units.Time(outcome.ClutchSlipSeconds ?? 0.0)} after the start and has slipped by {Units.SmallAngle(Math.Abs(outcome.ClutchSlipRadians))} at the end, while the motor keeps step.",
            _ => $"{axis} arrives but does not settle: in the time watched after the slew it does not stay within {Units.SmallAngle(Tolerance(outcome))} of one place.",
        };
    }

    /// <summary>The part of the move in which sync was lost.</summary>
    public static string During(LossOfSync loss) => loss.Phase switch
    {
        MovePhase.Accelerating => "while speeding up",
        MovePhase.Slewing => "at the steady slew rate",
        MovePhase.Decelerating => "while slowing down",
        _ => "after the slew",
    };

    private static string Short(AxisOutcome outcome) => outcome.Verdict switch
    {
        MoveEnd.Stalls when outcome.Loss is { } loss => $"the {outcome.Axis.Words()} loses step {Units.Time(loss.TimeSeconds)} after the start, {During(loss)}",
        MoveEnd.ClutchSlips => $"the clutch of the {outcome.Axis.Words()} gives way {Units.Time(outcome.ClutchSlipSeconds ?? 0.0)} after the start",
        _ => $"the {outcome.Axis.Words()} arrives but does not come to rest in the time watched",
    };

    // An axis may settle and still rest off its target: whoever points with it must know.
    private static string Beside(AxisOutcome outcome) => outcome.Settling is { AgainstCommandSeconds: null }
        ? $" It does not rest on its target: it ends {Units.SmallAngle(Math.Abs(outcome.Offset.TotalRadians))} off the command."
        : "";

    // "Arrives" alone would be read as "on target".
    private static string OffTarget(IReadOnlyList<AxisResult> results)
    {
        List<AxisOutcome> off = [.. results.Select(result => result.Outcome).Where(outcome => outcome.Settling is { AgainstCommandSeconds: null })];
        if (off.Count == 0)
        {
            return "";
        }

        string by = off.Count == 1 && results.Count == 1
            ? Units.SmallAngle(Math.Abs(off[0].Offset.TotalRadians))
            : Say.List([.. off.Select(outcome => $"{Units.SmallAngle(Math.Abs(outcome.Offset.TotalRadians))} in {(outcome.Axis == MountAxis.Polar ? "hour angle" : "declination")}")]);
        return $", but off its target by {by}";
    }

    private static double Tolerance(AxisOutcome outcome) => outcome.Settling?.ToleranceRadians ?? 0.0;
}
