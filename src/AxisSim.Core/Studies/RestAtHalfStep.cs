using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Studies;

/// <summary>Runs the same move at half the step and looks where it comes to rest.</summary>
/// <remarks>
/// A rest that moves by little with the step is converged. One that moves is either short of it (an order-2 error shrinks fourfold at half the step, impacts of flanks
/// twofold), or not to be had at any step: after ringing between flanks on dry friction the last digit decides where the axis sticks.
/// </remarks>
internal static class RestAtHalfStep
{
    private const int Parts = 20;

    /// <summary>Null when a quantity of that run is no longer a finite number.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="plan">The plan of both axes.</param>
    /// <param name="stepSeconds">The step that is halved, s.</param>
    /// <param name="progress">Called with the share done; may end the run by an exception.</param>
    public static HalfStepRest? Of(MountSetup setup, MountAxis axis, MovePlan plan, double stepSeconds, Action<double>? progress)
    {
        var run = new MoveRun(setup, axis, plan, 0.5 * stepSeconds);
        var record = new MoveRecord(run, setup.Axis(axis).Train.TotalRatio, SettleJudge.Of(setup, axis).RestSeconds, trace: null);
        var recorder = new MoveRecorder(record);
        for (int part = 1; part <= Parts; part++)
        {
            if (!run.RunTo(plan.EndSeconds * part / Parts, ref recorder, stopWhenLost: false))
            {
                return null;
            }

            progress?.Invoke((double)part / Parts);
        }

        return new HalfStepRest(record.LostAt is null ? record.Settle.Rest : null);
    }
}
