using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Benchmarks.Cases;

/// <summary>A run of the polar axis that can be stepped by a number of steps, with or without a record of each.</summary>
internal sealed class SteppedRun
{
    private readonly MoveRun _run;
    private readonly double _ratio;

    public SteppedRun(MountSetup setup)
    {
        AxisModel model = setup.Axis(MountAxis.Polar);
        _ratio = model.Train.TotalRatio;
        _run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
    }

    public double StepSeconds => _run.Choice.StepSeconds;

    /// <summary>Takes exactly this many steps (a multiple of the block); throws when sync is lost, for then another thing would be timed.</summary>
    public double Take(int steps)
    {
        var none = default(NoObserver);
        return Take(steps, ref none);
    }

    /// <summary>The same with each step recorded, as a simulation of the program does.</summary>
    public double TakeRecorded(int steps)
    {
        var recorder = new MoveRecorder(new MoveRecord(_run, _ratio, 0.2, new TraceRecorder(_run, _ratio, _ => (0.0, 0.0), _ => (0.0, 0.0), double.PositiveInfinity, sink: null)));
        return Take(steps, ref recorder);
    }

    private double Take<TObserver>(int steps, ref TObserver observer)
        where TObserver : struct, IStepObserver
    {
        // Half a step short, so that the end of the last block reaches it whatever the rounding.
        if (steps % MoveRun.BlockSteps != 0 || !_run.RunTo(_run.TimeSeconds + ((steps - 0.5) * StepSeconds), ref observer, stopWhenLost: true))
        {
            throw new InvalidOperationException($"the timed run lost sync or its clutch's grip by {_run.TimeSeconds} s");
        }

        return _run.State.Axis;
    }
}
