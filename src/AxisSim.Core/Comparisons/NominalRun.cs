using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Comparisons;

/// <summary>One axis through the whole move as it is, judged like a simulated move: settling, heat and power.</summary>
/// <param name="SettleSeconds">Settle time, s; NaN when it does not settle.</param>
/// <param name="ContinuousCelsius">Winding temperature after slewing without end, degrees Celsius.</param>
/// <param name="MeanWatts">Mean power from the supply over the slew, W.</param>
internal readonly record struct NominalRun(double SettleSeconds, double ContinuousCelsius, double MeanWatts)
{
    public static NominalRun Of(MountSetup setup, MountAxis axis, double stepSeconds)
    {
        var plan = new MovePlan(setup);
        var run = new MoveRun(setup, axis, plan, stepSeconds);
        SettleJudge judge = SettleJudge.Of(setup, axis);
        var record = new MoveRecord(run, setup.Axis(axis).Train.TotalRatio, judge.RestSeconds, plan.EndSeconds);
        var recorder = new MoveRecorder(record);
        bool whole = run.RunTo(plan.EndSeconds, ref recorder, stopWhenLost: true);
        AxisModel model = setup.Axis(axis);
        double step = run.Choice.StepSeconds;
        double? settled = whole ? judge.Within(record.SettleErrors, step, judge.Rest(record.SettleErrors, step), judge.ToleranceRadians) : null;
        var heat = new WindingHeat(setup.Disturbances.AmbientCelsius, model.Motor.ThermalResistanceKelvinPerWatt, model.Motor.ThermalTimeConstantSeconds);
        return new NominalRun(settled ?? double.NaN, heat.Balance(record.SlewCopperWattsAt20), record.MeanSupplyAmperes * model.Drive.SupplyVolts);
    }
}
