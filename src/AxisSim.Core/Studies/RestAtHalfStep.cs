using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Where the same move comes to rest at half the step: tells whether its place of rest may be believed.</summary>
/// <remarks>
/// A rest that moves by little with the step is converged. One that moves is either short of it (an order-2 error shrinks fourfold at half the step, impacts of flanks
/// twofold), or not to be had at any step: after ringing between flanks on dry friction the last digit decides where the axis sticks.
/// </remarks>
internal static class RestAtHalfStep
{
    /// <summary>The mean error of the payload about plan and periodic error at the end of the run, rad; null when the run does not get there.</summary>
    public static double? Of(MountSetup setup, MountAxis axis, MovePlan plan, double stepSeconds)
    {
        var run = new MoveRun(setup, axis, plan, 0.5 * stepSeconds);
        double from = plan.EndSeconds - SettleJudge.Of(setup, axis).RestSeconds;
        var none = new NoObserver();
        var mean = new MeanError(setup.Axis(axis).Train.TotalRatio);
        var observer = new Observer(mean, from);
        return run.RunTo(from, ref none, stopWhenLost: true) && run.RunTo(plan.EndSeconds, ref observer, stopWhenLost: true) ? mean.Radians : null;
    }

    private sealed class MeanError(double ratio)
    {
        private double sum;
        private long count;

        public double Radians => sum / count;

        public void Add(double payload, double plan)
        {
            sum += payload - (plan / ratio);
            count++;
        }
    }

    private readonly struct Observer(MeanError mean, double from) : IStepObserver
    {
        public static bool Wants => true;

        public void See(in StepContext step, MoveRun run)
        {
            if (step.StartSeconds >= from)
            {
                mean.Add(run.PointingRadians, step.PlanEndRadians);
            }
        }
    }
}
