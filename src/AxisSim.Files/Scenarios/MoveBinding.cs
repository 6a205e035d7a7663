using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Files.Scenarios;

/// <summary>The move from values.</summary>
internal static class MoveBinding
{
    /// <summary>The move; an axis that the scenario leaves out stays where it starts unless the file says otherwise.</summary>
    public static MoveSettings Bind(ValueSet values, double latitudeRadians)
    {
        MountPose start = Pose(values, "start", latitudeRadians, default);
        return new MoveSettings
        {
            Start = start,
            End = Pose(values, "end", latitudeRadians, start),
            FollowUp = values.Text("move.follow") == "sidereal" ? FollowUp.Sidereal : FollowUp.Rest,
            ObserveSeconds = values.Number("move.observe"),
            SettleToleranceRadians = values.Number("settling.tolerance"),
        };
    }

    private static MountPose Pose(ValueSet values, string end, double latitude, MountPose otherwise)
    {
        if (!MoveChecks.IsSky(values, end))
        {
            return new MountPose(values.Maybe($"move.{end}_polar") ?? otherwise.PolarRadians, values.Maybe($"move.{end}_declination") ?? otherwise.DeclinationRadians);
        }

        PierSide side = values.Text($"move.{end}.pier_side") == "west" ? PierSide.West : PierSide.East;
        return SkyPose.ToMechanical(values.Number($"move.{end}.hour_angle"), values.Number($"move.{end}.declination"), side, latitude);
    }
}
