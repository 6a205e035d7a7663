using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

/// <summary>The commands of a drive, step after step, in units of the current that holds; what lanes with the same plan and drive have in common.</summary>
internal sealed class LaneCommands
{
    private readonly MotorPlan _plan;
    private readonly double _stepsPerRadian;
    private readonly double _step;
    private readonly double _fall;
    private readonly SyncProbe _probe;
    private readonly MicrostepTable _table;
    private readonly double _teeth;
    private PhaseCommand _command;
    private int _cursor;
    private long _index;
    private double _now;
    private double _before;
    private readonly bool _damped;
    private bool _later;
    private bool _ignoreFall;

    public LaneCommands(AxisModel model, MotorPlan plan, bool probe, double stepSeconds)
        : this(model, plan, stepSeconds, Fall(model, plan), new SyncProbe(probe ? 1.0 : 0.0, plan.SlewSeconds), Events(model, plan)) =>
        _damped = model.DampingNewtonMetreSecondsPerRadian != 0.0;

    /// <summary>Commands at the slew current with the sync probe that neither end nor fall.</summary>
    /// <param name="model">The axis.</param>
    /// <param name="plan">Plan of the shaft.</param>
    /// <param name="fullSteppingFrom">Time up to which the drive microsteps and from which it full-steps, s.</param>
    /// <param name="stepSeconds">Step, s.</param>
    public LaneCommands(AxisModel model, MotorPlan plan, double fullSteppingFrom, double stepSeconds)
        : this(
            model,
            plan,
            stepSeconds,
            double.PositiveInfinity,
            new SyncProbe(1.0, double.PositiveInfinity),
            [new DriveEvent(0.0, 1.0, false), new DriveEvent(fullSteppingFrom, 1.0, true)]) =>
        _damped = true;

    private LaneCommands(AxisModel model, MotorPlan plan, double stepSeconds, double fallSeconds, SyncProbe probe, DriveEvent[] events)
    {
        _plan = plan;
        _stepsPerRadian = LaneSetup.StepsPerRadian(model.Motor);
        _step = stepSeconds;
        _fall = fallSeconds;
        _probe = probe;
        _table = MicrostepTable.Of(model.Drive.MicrostepsPerFullStep);
        _teeth = model.Motor.RotorTeeth;
        _command = new PhaseCommand(_table, _teeth, 1.0, events);
        _now = plan.Position(0.0);
    }

    private LaneCommands(LaneCommands other)
    {
        (_plan, _stepsPerRadian, _step, _fall, _probe, _command) = (other._plan, other._stepsPerRadian, other._step, other._fall, other._probe, other._command);
        (_table, _teeth) = (other._table, other._teeth);
        (_cursor, _index, _now, _before, _damped, _later, _ignoreFall) = (other._cursor, other._index, other._now, other._before, other._damped, other._later, other._ignoreFall);
    }

    /// <summary>Steps given out so far.</summary>
    public long Index => _index;

    /// <summary>Planned shaft angle now, full steps.</summary>
    public double PlanFullSteps => _stepsPerRadian * _now;

    /// <summary>Whether the sync probe is among them.</summary>
    public bool Probes => _probe.AmplitudeNewtonMetres != 0.0;

    public bool FullStepping => _command.FullStepping;

    /// <summary>The last step given out, as plan angles.</summary>
    public StepContext Last
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new((_index - 1) * _step, _step, _before, _now);
    }

    public LaneCommands Copy() => new(this);

    /// <summary>From now on, mode and current stay as they are.</summary>
    public void IgnoreEvents()
    {
        _command.IgnoreEvents();
        _ignoreFall = true;
    }

    /// <summary>The commands of the next steps.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Fill(Span<LaneCommand> commands, Span<LaneStepKind> kinds)
    {
        for (int k = 0; k < commands.Length; k++)
        {
            kinds[k] = Next(ref commands[k]);
        }
    }

    /// <summary>The command of the next step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public LaneStepKind Next(ref LaneCommand command)
    {
        double start = _index * _step;
        double from = _now;
        _index++;
        double end = _plan.Position(_index * _step, ref _cursor);
        LaneLevel before = Level();
        command.Split = _command.Over(start, _step, from, end, ref command.FirstA, ref command.FirstB, ref command.SecondA, ref command.SecondB);
        bool split = command.Split < 1.0;

        // The current falls only in a step that is split.
        _later |= split && !_ignoreFall && _fall < start + _step;
        command.PlanRate = _stepsPerRadian * (end - from);
        command.Probe = _probe.Mean(start, _step);
        _before = from;
        _now = end;
        return new LaneStepKind(split, before, Level(), _damped || command.Probe != 0.0);
    }

    /// <summary>Whether every command from a time on is the same.</summary>
    public bool IsConstant(double seconds) => _plan.RestsFrom(seconds) && seconds > _fall;

    /// <summary>Start of the next piece of the plan, s.</summary>
    public double PieceEndSeconds => _plan.Piece(_cursor).End;

    /// <summary>When mode or current change next, s.</summary>
    public double EventSeconds => _command.NextSeconds;

    /// <summary>Rows of the drive's table of microsteps.</summary>
    public MicrostepRow[] Microsteps => _table.Rows;

    /// <summary>Goes on to a later step, where neither the piece of the plan nor mode nor current have changed since.</summary>
    public void GoTo(long index)
    {
        _index = index;
        _now = _plan.Position(index * _step, ref _cursor);
    }

    /// <summary>What the commands follow from until something changes.</summary>
    public LanePlan Plan(in LaneParameters p)
    {
        LaneLevels levels = p.Levels;
        return new LanePlan
        {
            Piece = LaneSetup.Piece(_plan.Piece(_cursor)),
            StepsPerRadian = _stepsPerRadian,
            Teeth = _teeth,
            FullStepping = FullStepping ? 1.0 : 0.0,
            Level = levels.Of(Level()),
            CellsPerRadian = _table.CellsPerRadian,
            Cells = _table.Rows.Length,
            PerCell = 1.0 / _table.Rows.Length,
            ProbeEnd = Probes ? _probe.EndSeconds : double.NegativeInfinity,
            Damped = _damped ? 1.0 : 0.0,
        };
    }

    private static double Fall(AxisModel model, MotorPlan plan) => plan.SlewSeconds + model.Drive.CurrentFallDelaySeconds;

    private static DriveEvent[] Events(AxisModel model, MotorPlan plan)
    {
        double fall = Fall(model, plan);
        var events = plan.Crossings(model.Drive.ChangeoverRadiansPerSecond).Select(m => new DriveEvent(m.TimeSeconds, 1.0, m.Above)).ToList();
        events.Add(new DriveEvent(fall, 1.0, events.FindLast(e => e.TimeSeconds <= fall).FullStepping));
        return [.. events.OrderBy(e => e.TimeSeconds)];
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private LaneLevel Level() => (_later ? LaneLevel.LaterMicrostepping : LaneLevel.SlewMicrostepping) + (_command.FullStepping ? 1 : 0);
}
