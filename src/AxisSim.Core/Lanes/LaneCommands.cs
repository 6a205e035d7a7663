using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;

namespace AxisSim.Core.Lanes;

/// <summary>The commands of a drive, step after step, in units of the current that holds; what lanes with the same plan and drive have in common.</summary>
internal sealed class LaneCommands
{
    private readonly MotorPlan _plan;
    private readonly double _stepsPerRadian;
    private readonly double _step;
    private readonly double _fall;
    private readonly SyncProbe _probe;
    private PhaseCommand _command;
    private int _cursor;
    private long _index;
    private double _now;
    private bool _later;
    private bool _ignoreFall;

    public LaneCommands(AxisModel model, MotorPlan plan, bool probe, double stepSeconds)
    {
        ChopperDrive drive = model.Drive;
        _plan = plan;
        _stepsPerRadian = LaneRows.StepsPerRadian(model.Motor);
        _step = stepSeconds;
        _fall = plan.SlewSeconds + drive.CurrentFallDelaySeconds;
        _probe = new SyncProbe(probe ? 1.0 : 0.0, plan.SlewSeconds);
        var events = plan.Crossings(drive.ChangeoverRadiansPerSecond).Select(m => new DriveEvent(m.TimeSeconds, 1.0, m.Above)).ToList();
        events.Add(new DriveEvent(_fall, 1.0, events.FindLast(e => e.TimeSeconds <= _fall).FullStepping));
        _command = new PhaseCommand(MicrostepTable.Of(drive.MicrostepsPerFullStep), model.Motor.RotorTeeth, 1.0, [.. events.OrderBy(e => e.TimeSeconds)]);
        _now = plan.Position(0.0);
    }

    private LaneCommands(LaneCommands other)
    {
        (_plan, _stepsPerRadian, _step, _fall, _probe, _command) = (other._plan, other._stepsPerRadian, other._step, other._fall, other._probe, other._command);
        (_cursor, _index, _now, _later, _ignoreFall) = (other._cursor, other._index, other._now, other._later, other._ignoreFall);
    }

    /// <summary>Steps given out so far.</summary>
    public long Index => _index;

    /// <summary>Planned shaft angle now, rad.</summary>
    public double PlanRadians => _now;

    /// <summary>The same in full steps.</summary>
    public double PlanFullSteps => _stepsPerRadian * _now;

    public bool FullStepping => _command.FullStepping;

    /// <summary>The last step given out, as plan angles.</summary>
    public StepContext Last { get; private set; }

    public LaneCommands Copy() => new(this);

    /// <summary>From now on, mode and current stay as they are.</summary>
    public void IgnoreEvents()
    {
        _command.IgnoreEvents();
        _ignoreFall = true;
    }

    /// <summary>The command of the next step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneStepKind Next(out LaneCommand command)
    {
        double start = _index * _step;
        _index++;
        double end = _plan.Position(_index * _step, ref _cursor);
        var step = new StepContext(start, _step, _now, end);
        int before = Level();
        PhaseTargets targets = _command.Over(step);
        _later = _later || (!_ignoreFall && _fall < start + _step);
        bool split = targets.Split < 1.0;
        command = default;
        command.FirstA = targets.FirstA;
        command.FirstB = targets.FirstB;
        command.PlanRate = _stepsPerRadian * (end - step.PlanStartRadians);
        command.Probe = _probe.Mean(start, _step);
        command.Split = targets.Split;
        command.SecondA = targets.SecondA;
        command.SecondB = targets.SecondB;
        _now = end;
        Last = step;
        return new LaneStepKind(split, before, Level());
    }

    /// <summary>Whether every further command is the same.</summary>
    public bool Constant
    {
        get
        {
            double now = _index * _step;
            return _plan.RestsFrom(now) && now > _fall;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Level() => (_later ? 2 : 0) + (_command.FullStepping ? 1 : 0);
}
