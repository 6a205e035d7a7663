using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>The planned path of one axis in words: how long it takes, and where a failed move leaves it.</summary>
internal static class SlewText
{
    // What settling, tracking and backlash may add to a path, rad (1 deg); beyond it something runs where nobody planned it to.
    private const double PathSlackRadians = Math.PI / 180.0;
    private const double SameSeconds = 1e-6;

    /// <summary>How long the slew takes, and which axis decides that.</summary>
    public static string Duration(MountSetup setup, AxisOutcome outcome)
    {
        MountAxis other = outcome.Axis.Other();
        (double from, double to) = Ends(setup.Move, outcome.Axis);
        double own = MotionProfile.Create(to - from, setup.Axis(outcome.Axis).Motion).DurationSeconds;
        return own >= outcome.SlewSeconds - SameSeconds ? Units.Time(outcome.SlewSeconds) + ", as planned"
            : own == 0.0 ? $"none of this axis, which starts where it ends; {Units.Time(outcome.SlewSeconds)} of the {other.Words()}"
            : $"{Units.Time(own)}, as planned; the slower {other.Words()} takes {Units.Time(outcome.SlewSeconds)}";
    }

    /// <summary>A warning when a failed axis ends outside the path that was planned for it; null otherwise.</summary>
    public static string? Runaway(MountSetup setup, AxisOutcome outcome)
    {
        (double from, double to) = Ends(setup.Move, outcome.Axis);
        double rest = to + outcome.Offset.TotalRadians;
        double beyond = Math.Max(Math.Min(from, to) - rest, rest - Math.Max(from, to));
        if (outcome.Verdict == MoveEnd.Arrives || !(beyond > PathSlackRadians))
        {
            return null;
        }

        string end = Math.Abs(rest - from) < Math.Abs(rest - to) ? "before its start" : "past its target";
        return $"It comes to rest {Units.SmallAngle(beyond)} {end}. Once motor or clutch lets go, the load can drive the axis to where no move was planned, back past its start too. Keep pier, cables and people clear of that way.";
    }

    private static (double From, double To) Ends(MoveSettings move, MountAxis axis) => axis == MountAxis.Polar
        ? (move.Start.PolarRadians, move.End.PolarRadians)
        : (move.Start.DeclinationRadians, move.End.DeclinationRadians);
}
