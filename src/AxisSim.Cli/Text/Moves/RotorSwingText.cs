using AxisSim.Core.Outcomes;

namespace AxisSim.Cli.Text.Moves;

/// <summary>How far the rotor swings, as a share of what its field holds, in a sentence.</summary>
internal static class RotorSwingText
{
    private const double FullStepsPerRadian = 2.0 / Math.PI;

    /// <summary>The sentence; null when nothing was found.</summary>
    public static string? Of(AxisOutcome outcome)
    {
        if (outcome.Swing is not { } swing)
        {
            return outcome.Verdict == MoveEnd.Stalls ? "more than its field holds: it loses step" : null;
        }

        string where = $"{Steps(Math.Abs(swing.AngleRadians))} of {Steps(swing.HeldRadians)} full steps from its field, {Units.Time(swing.TimeSeconds)} after the start, at {Units.Speed(swing.MotorSpeedRadiansPerSecond)}, {(swing.FullStepping ? "full-stepping" : "microstepping")}";
        return swing.Share < 1.0
            ? $"{Units.Percent(swing.Share)} of what its field holds: {where}"
            : $"{Units.Percent(swing.Share)} of what its field holds, so it came back only because the load let go: {where}";
    }

    private static string Steps(double radians) => Say.Number(radians * FullStepsPerRadian);
}
