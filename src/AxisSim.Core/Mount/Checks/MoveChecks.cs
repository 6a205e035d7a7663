using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of a move.</summary>
internal static class MoveChecks
{
    public static void Check(ProblemCollector found, MoveSettings move)
    {
        found.At(nameof(MountSetup.Move), nameof(MoveSettings.Start));
        found.Check(move.Start.PolarRadians, MoveBounds.Angle);
        found.Check(move.Start.DeclinationRadians, MoveBounds.Angle);
        found.At(nameof(MountSetup.Move), nameof(MoveSettings.End));
        found.Check(move.End.PolarRadians, MoveBounds.Angle);
        found.Check(move.End.DeclinationRadians, MoveBounds.Angle);
        found.At(nameof(MountSetup.Move));
        found.CheckWord(move.FollowUp);
        found.Check(move.ObserveSeconds, MoveBounds.Observe);
        found.Check(move.SettleToleranceRadians, MoveBounds.SettleTolerance);
    }
}
