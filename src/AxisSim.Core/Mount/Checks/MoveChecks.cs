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

    /// <summary>Whether an axis' part of the move ends within a day: a slip in a rate or an acceleration would be simulated for ever.</summary>
    public static void Length(ProblemCollector found, string owner, AxisMotion? motion, double distanceRadians)
    {
        if (motion is not null && AxisBounds.SlewRate.Holds(motion.SlewRateRadiansPerSecond) && motion.LeastSeconds(distanceRadians) > MoveSettings.LongestPlanSeconds)
        {
            bool slow = distanceRadians / motion.SlewRateRadiansPerSecond > MoveSettings.LongestPlanSeconds;
            found.At(owner, nameof(AxisModel.Motion));
            found.Add(
                slow ? nameof(motion.SlewRateRadiansPerSecond) : nameof(motion.Ramp),
                $"{ProblemCollector.Text(slow ? motion.SlewRateRadiansPerSecond : motion.PeakAcceleration)}{(slow ? "" : " rad/s2")}, with which the move of {ProblemCollector.Text(distanceRadians)} rad takes {ProblemCollector.Text(motion.LeastSeconds(distanceRadians))} s or more",
                $"a plan of at most {ProblemCollector.Text(MoveSettings.LongestPlanSeconds)} s");
        }
    }
}
