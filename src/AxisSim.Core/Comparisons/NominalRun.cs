using AxisSim.Core.Drives;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Comparisons;

/// <summary>One axis through the whole move as it is, judged like a simulated move: settling, heat and power.</summary>
/// <param name="OwnSlewSeconds">Planned duration of the slew of this axis alone, s.</param>
/// <param name="SettleSeconds">Settle time, s, from the end of the axis' own slew; NaN when it does not settle.</param>
/// <param name="Endless">The hottest winding after slewing, tracking or holding without end.</param>
/// <param name="MeanWatts">Mean power from the supply over the slew, W.</param>
internal readonly record struct NominalRun(double OwnSlewSeconds, double SettleSeconds, ContinuousHeat Endless, double MeanWatts)
{
    public static NominalRun Of(MountSetup setup, MountAxis axis, double stepSeconds)
    {
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        var run = new MoveRun(setup, axis, plan, stepSeconds);
        double ratio = model.Train.TotalRatio, own = run.ShaftPlan.SlewSeconds;
        SettleJudge judge = SettleJudge.Of(setup, axis);
        var record = new MoveRecord(run, ratio, judge.RestSeconds, trace: null);
        var recorder = new Recorder(record, judge.Trail(run.Choice.StepSeconds), own, ratio);
        bool whole = run.RunTo(plan.EndSeconds, ref recorder, stopWhenLost: true);
        double? settled = whole ? judge.Within(recorder.Errors, recorder.Errors.Rest, judge.ToleranceRadians) : null;
        return new NominalRun(own, settled ?? double.NaN, ContinuousHeat.Of(setup, axis, record.SlewCopperWattsAt20), record.MeanSupplyAmperes * model.Drive.SupplyVolts);
    }

    /// <summary>Hands each step to the record of a move, and keeps the errors from the end of the axis' own slew on: the other axis may slew for longer.</summary>
    private readonly struct Recorder(MoveRecord record, SettleTrail errors, double from, double ratio) : IStepObserver
    {
        public static bool Wants => true;

        public SettleTrail Errors => errors;

        public void See(in StepContext step, MoveRun run)
        {
            record.See(step);
            if (step.StartSeconds + step.StepSeconds > from)
            {
                errors.Add(run.PointingRadians - (step.PlanEndRadians / ratio));
            }
        }
    }
}
