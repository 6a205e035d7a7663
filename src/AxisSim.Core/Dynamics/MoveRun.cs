using System.Runtime.CompilerServices;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Dynamics;

/// <summary>A quantity that is no longer a finite number: the run stops there.</summary>
/// <param name="Quantity">Which.</param>
/// <param name="TimeSeconds">When, s.</param>
/// <param name="LastGood">State one step before.</param>
internal sealed record NonFinite(string Quantity, double TimeSeconds, AxisState LastGood);

/// <summary>One axis and its plan, ready to be stepped through a move.</summary>
/// <remarks>Time is step count times step, never accumulated. Blocks of steps share the slow terms and the checks.</remarks>
internal sealed class MoveRun
{
    /// <summary>Steps in a block.</summary>
    public const int BlockSteps = 16;

    /// <summary>Load angle beyond which sync is lost for good, electrical rad: past the unstable point (pi) half-way to the next stable one (2 pi).</summary>
    public const double LostRadians = 1.5 * Math.PI;

    private readonly MotorPlan _plan;
    private readonly double _step;
    private readonly double _teeth;
    private AxisDynamics<ChopperStepper, MoveLoad> _dynamics;
    private long _index;
    private int _cursor;
    private double _planNow;

    public MoveRun(MountSetup setup, MountAxis axis, MovePlan plan, double askedStepSeconds)
    {
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        Plan = plan;
        _plan = plan.For(axis, setup.Move, train.TotalRatio);
        AxisParameters parameters = AxisAssembly.Parameters(setup, axis);
        Choice = StepChoice.For(askedStepSeconds, model, parameters, _plan);
        _step = Choice.StepSeconds;
        _teeth = model.Motor.RotorTeeth;
        double amplitude = setup.Disturbances.SyncProbe ? SyncProbe.HoldingTorqueShare * model.Motor.HoldingTorqueNewtonMetres : 0.0;
        var load = new MoveLoad(setup, axis, plan, new SyncProbe(amplitude, _plan.SlewSeconds), parameters.ShaftInertia > 0.0, parameters.WormRatio);
        double start = axis == MountAxis.Polar ? setup.Move.Start.PolarRadians : setup.Move.Start.DeclinationRadians;
        AxisState state = AxisAssembly.Start(parameters, load, _plan, train.Worm.PeriodicError, train.Worm.Ratio, start);
        ChopperStepper motor = AxisAssembly.Motor(model, setup.Disturbances, _plan, setup.Tracks(axis), _step);
        _dynamics = new AxisDynamics<ChopperStepper, MoveLoad>(parameters, motor, load, state);
        _planNow = _plan.Position(0.0);
    }

    public MovePlan Plan { get; }

    public MotorPlan ShaftPlan => _plan;

    public StepChoice Choice { get; }

    public ref readonly AxisDynamics<ChopperStepper, MoveLoad> Dynamics => ref _dynamics;

    /// <summary>Time reached, s.</summary>
    public double TimeSeconds => _index * _step;

    /// <summary>Rotor less plan, electrical rad.</summary>
    public double LoadAngle => _teeth * (_dynamics.State.Rotor - _planNow);

    public NonFinite? Failure { get; private set; }

    /// <summary>A copy at this moment whose drive ignores what is still to change (the fall of the current after the slew).</summary>
    public MoveRun TwinWithSteadyCurrent()
    {
        var twin = (MoveRun)MemberwiseClone();
        twin._dynamics.Motor.IgnoreEvents();
        return twin;
    }

    /// <summary>Steps until a time (to the end of the block in which it lies), or until sync is lost when that ends the run, or a number is not finite.</summary>
    /// <returns>True when the time was reached.</returns>
    public bool RunTo<TObserver>(double untilSeconds, ref TObserver observer, bool stopWhenLost)
        where TObserver : struct, IStepObserver
    {
        while (TimeSeconds < untilSeconds)
        {
            AxisDynamics<ChopperStepper, MoveLoad> before = _dynamics;
            double planBefore = _planNow;
            int cursorBefore = _cursor;
            Block(ref observer);
            if (!_dynamics.IsFinite)
            {
                _index -= BlockSteps;
                (_dynamics, _planNow, _cursor) = (before, planBefore, cursorBefore);
                FindNonFinite();
                return false;
            }

            if (stopWhenLost && (Math.Abs(LoadAngle) > LostRadians || _dynamics.State.Slip != 0.0))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Block<TObserver>(ref TObserver observer)
        where TObserver : struct, IStepObserver
    {
        _dynamics.Load.BeginBlock(_dynamics.State, TimeSeconds, BlockSteps * _step);
        for (int k = 0; k < BlockSteps; k++)
        {
            StepContext context = Next();
            _dynamics.Step(context);
            if (TObserver.Wants)
            {
                observer.See(context, _dynamics);
            }
        }

        _dynamics.Motor.EndBlock(BlockSteps * _step);
    }

    private StepContext Next()
    {
        double start = _index * _step;
        _index++;
        double end = _plan.Position(_index * _step, ref _cursor);
        var context = new StepContext(start, _step, _planNow, end);
        _planNow = end;
        return context;
    }

    /// <summary>Repeats the block that failed step by step, to name the first quantity that is not finite.</summary>
    private void FindNonFinite()
    {
        _dynamics.Load.BeginBlock(_dynamics.State, TimeSeconds, BlockSteps * _step);
        AxisState good = _dynamics.State;
        for (int k = 0; k < BlockSteps; k++)
        {
            _dynamics.Step(Next());
            if (!_dynamics.IsFinite)
            {
                Failure = new NonFinite(_dynamics.State.FirstNotFinite() ?? "phase current, bus voltage or winding temperature", TimeSeconds, good);
                return;
            }

            good = _dynamics.State;
        }
    }
}
