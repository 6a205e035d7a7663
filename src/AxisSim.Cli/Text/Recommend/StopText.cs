using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>Stops from full speed, in words.</summary>
internal static class StopText
{
    /// <summary>Name and value of each.</summary>
    public static IEnumerable<(string Name, string Value)> Rows(Abort abort)
    {
        yield return ("abort by the ramp", $"{Units.Angle(abort.RampRadians)} in {Units.Time(abort.RampSeconds)}; it holds with the margin also where gravity drives the axis on, for each move brakes at the place where it helps most");
        yield return ("the worm", abort.SelfLocking
            ? "locks itself at every corner: without power gravity cannot turn the axis"
            : "does not lock itself at every corner: without power gravity may turn the axis");
        yield return ("power cut, helped", Words(abort.Helping));
        yield return ("power cut, opposed", Words(abort.Opposing));
    }

    private static string Words(Coast coast)
    {
        string after = coast.MovesFromRest ? "; then gravity sets it going again" : "";
        return coast.End switch
        {
            CoastEnd.RunsAway => "does not stop by itself: it runs on until it hangs, or hits something",
            CoastEnd.Locks when coast.ClutchSlips => $"the worm locks at once and the shock of {Units.AxisTorque(coast.ShockNewtonMetres)} is above the clutch's torque: it slips by {Units.SmallAngle(coast.AngleRadians)}{after}",
            CoastEnd.Locks => $"the worm locks at once: stops within {Units.SmallAngle(coast.AngleRadians)} of backlash and twist, with a shock of {Units.AxisTorque(coast.ShockNewtonMetres)} on the wheel{after}",
            _ => $"coasts {Units.SmallAngle(coast.AngleRadians)} in {Units.Time(coast.Seconds)}{after}",
        };
    }
}
