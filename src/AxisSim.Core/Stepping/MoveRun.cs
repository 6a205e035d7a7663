using System.Runtime.CompilerServices;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

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
    public const int BlockSteps = LaneLimits.BlockSteps;

    /// <summary>Load angle beyond which sync is lost for good, electrical rad: past the unstable point (pi) half-way to the next stable one (2 pi).</summary>
    public const double LostRadians = 1.5 * Math.PI;

    /// <summary>The same in full steps.</summary>
    public const double LostFullSteps = LaneLimits.LostFullSteps;

    private readonly double _step;
    private readonly double _radiansPerStep;
    private readonly bool _shaft;
    private readonly MoveLoad _load;
    private readonly LaneFeatures _features;
    private readonly LaneTerms _terms;
    private LaneDisturbances _disturbances;
    private readonly LaneCommand[] _block = new LaneCommand[BlockSteps];
    private readonly LaneSplitDecays[] _decays = new LaneSplitDecays[BlockSteps];
    private readonly LaneStepKind[] _kinds = new LaneStepKind[BlockSteps];
    private LaneCommands _commands;
    private LaneParameters _p;
    private LaneState _state;
    private double _blockStart;
    private int _stepsOfBlock;

    public MoveRun(MountSetup setup, MountAxis axis, MovePlan plan, double askedStepSeconds)
    {
        var ready = new LaneAxis(setup, axis, plan, askedStepSeconds);
        Plan = plan;
        ShaftPlan = ready.ShaftPlan;
        Parameters = ready.Mechanics;
        Choice = ready.Choice;
        _step = Choice.StepSeconds;
        _shaft = ready.Features.Shaft;
        _load = new MoveLoad(setup, axis, plan);
        _features = ready.Features;
        _terms = ready.Terms;
        _disturbances = ready.Disturbances();
        _commands = ready.Commands();
        _p = ready.Parameters;
        _radiansPerStep = 1.0 / _p.StepsPerRadian;
        _state = ready.Start;
    }

    public MovePlan Plan { get; }

    public MotorPlan ShaftPlan { get; }

    public StepChoice Choice { get; }

    public AxisParameters Parameters { get; }

    /// <summary>Time reached, s.</summary>
    public double TimeSeconds => _commands.Index * _step;

    /// <summary>Rotor less plan, electrical rad.</summary>
    public double LoadAngle => 0.5 * Math.PI * (RotorFullSteps - _commands.PlanFullSteps);

    public NonFinite? Failure { get; private set; }

    /// <summary>Mechanical state, speeds per second.</summary>
    public AxisState State
    {
        get
        {
            double perSecond = _p.StepsPerSecond;
            return new AxisState
            {
                Rotor = RotorFullSteps * _radiansPerStep,
                RotorSpeed = RotorSpeed,
                Shaft = ShaftRadians,
                ShaftSpeed = _state.ShaftSpeed * perSecond,
                Axis = AxisRadians,
                AxisSpeed = AxisSpeed,
                Slip = _state.Slip,
                Payload = _state.Payload - (0.5 * _state.PayloadSpeed),
                PayloadSpeed = _state.PayloadSpeed * perSecond,
            };
        }
    }

    /// <summary>Speed of the axis, rad/s.</summary>
    public double AxisSpeed => _state.AxisSpeed * _p.StepsPerSecond;

    /// <summary>Speed of the rotor, rad/s.</summary>
    public double RotorSpeed => _state.RotorSpeed * _radiansPerStep * _p.StepsPerSecond;

    /// <summary>Angle of the axis, rad.</summary>
    public double AxisRadians => _state.Axis - (0.5 * _state.AxisSpeed);

    /// <summary>Where the telescope is: the flexible payload, or the axis when it is rigid, rad.</summary>
    public double PayloadRadians => _features.Payload ? _state.Payload - (0.5 * _state.PayloadSpeed) : AxisRadians;

    /// <summary>Worm angle at the axis, rad.</summary>
    public double WormAxisRadians => (_shaft ? ShaftRadians : RotorFullSteps) * _p.WormPerNode;

    /// <summary>Periodic error at the worm's present angle, rad.</summary>
    public double PeriodicErrorRadians => PeriodicErrorAt(TimeSeconds, WormAxisRadians).Error;

    /// <summary>Twist of the worm mesh, rad.</summary>
    public double TwistRadians => WormAxisRadians + PeriodicErrorRadians - AxisRadians - _state.Slip;

    /// <summary>Payload less periodic error, rad.</summary>
    public double PointingRadians
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => LaneBlock.Pointing(ref _state, ref _p, _stepsOfBlock, _shaft, _features.Payload);
    }

    /// <summary>Copper loss over the axis' own slew so far (by blocks of steps) as it would be at 20 degrees Celsius, J; 0 where heating is left out.</summary>
    public double SlewColdJoules => _state.SlewColdJoules;

    public double SlipRadians => _state.Slip;

    /// <summary>Winding temperature, degrees Celsius.</summary>
    public double Celsius => _state.Celsius;

    public bool FullStepping => _commands.FullStepping;

    public (double A, double B) Currents => (_state.CurrentA, _state.CurrentB);

    /// <summary>Mean motor torque of the last step, N m.</summary>
    public double MotorTorque => _state.MotorKick / _p.RotorKick;

    /// <summary>Mesh torque at the axis in the middle of the last step, N m.</summary>
    public double MeshTorque => _state.MeshTorque;

    /// <summary>Readings of the last step.</summary>
    public MotorReading Reading
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(_state.MeanA, _state.MeanB, _state.Electrical, _state.Copper, _state.Stored, _state.Volts, _state.SupplyAmperes, _state.Limited > 0.0);
    }

    /// <summary>Periodic error and its slope at a time within the present block and a worm angle (rad at the axis).</summary>
    public (double Error, double Slope) PeriodicErrorAt(double seconds, double wormAxisRadians)
    {
        double slope = (_state.Gear / _p.WormPerNode) - 1.0;
        return ((slope * wormAxisRadians) + _state.Lead + _state.Slip + (_state.LeadRate * (seconds - _blockStart) * _p.StepsPerSecond), slope);
    }

    /// <summary>Gravity, wind and the other axis' motion at an axis angle and time, N m.</summary>
    public double Outside(double axisRadians, double seconds) => _load.Outside(axisRadians, seconds);

    /// <summary>A copy at this moment whose drive ignores what is still to change (the fall of the current after the slew).</summary>
    public MoveRun TwinWithSteadyCurrent()
    {
        var twin = (MoveRun)MemberwiseClone();
        twin._commands = _commands.Copy();
        twin._disturbances = _disturbances.Copy();
        twin._commands.IgnoreEvents();
        return twin;
    }

    /// <summary>Steps until a time (to the end of the block in which it lies), or until sync is lost when that ends the run, or a number is not finite.</summary>
    /// <returns>True when the time was reached.</returns>
    // Compiled for speed at the first call: a slew is over before the runtime would get to it by itself.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool RunTo<TObserver>(double untilSeconds, ref TObserver observer, bool stopWhenLost)
        where TObserver : struct, IStepObserver
    {
        while (TimeSeconds < untilSeconds)
        {
            LaneState before = _state;
            Block(ref observer);
            if (!LaneSetup.IsFinite(_state))
            {
                FindNonFinite(before);
                return false;
            }

            if (stopWhenLost && (Math.Abs(LoadAngle) > LostRadians || _state.Slip != 0.0))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Block<TObserver>(ref TObserver observer)
        where TObserver : struct, IStepObserver
    {
        _blockStart = TimeSeconds;
        LaneDisturbance disturbance = Disturbance();
        LaneBlock.Begin(ref _state, ref _p, ref disturbance, _terms, _shaft);
        if (TObserver.Wants)
        {
            // The commands seen are those of the step just taken.
            for (int k = 0; k < BlockSteps; k++)
            {
                _kinds[k] = _commands.Next(ref _block[k]);
                SplitDecays(k);
                Step(_features with { Power = true }, k, k + 1);
                _stepsOfBlock = k + 1;
                observer.See(_commands.Last, this);
            }
        }
        else
        {
            _commands.Fill(_block, _kinds);
            for (int k = 0; k < BlockSteps; k++)
            {
                SplitDecays(k);
            }

            Step(_features, 0, BlockSteps);
        }

        if (_terms.Heat)
        {
            LaneBlock.Warm(ref _state, ref _p, disturbance.Slewing);
        }
    }

    private double RotorFullSteps => _state.Rotor - (0.5 * _state.RotorSpeed);

    private double ShaftRadians => _state.Shaft - (0.5 * _state.ShaftSpeed);

    /// <summary>Disturbances of the block that begins some steps from now.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private LaneDisturbance Disturbance(int fromNow = 0)
    {
        long first = _commands.Index + fromNow;
        return _disturbances.Between(_terms, first * _step, (first + BlockSteps) * _step);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void SplitDecays(int k)
    {
        if (_kinds[k].Split)
        {
            LaneBlock.SplitDecays(_block[k].Split, ref _decays[k], ref _state, ref _p);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Step(in LaneFeatures features, int first, int end) =>
        LaneDispatch.Run(features, ref _state, ref _p, ref _block[0], ref _kinds[0], 0, ref _decays[0], 0, 1, first, end);

    /// <summary>Repeats the block that failed step by step, to name the first quantity that is not finite.</summary>
    private void FindNonFinite(in LaneState before)
    {
        _state = before;
        LaneDisturbance disturbance = Disturbance(-BlockSteps);
        LaneBlock.Begin(ref _state, ref _p, ref disturbance, _terms, _shaft);
        AxisState good = State;
        for (int k = 0; k < BlockSteps; k++)
        {
            Step(_features, k, k + 1);
            if (!LaneSetup.IsFinite(_state))
            {
                Failure = new NonFinite(State.FirstNotFinite() ?? "phase current, bus voltage or winding temperature", _blockStart + ((k + 1) * _step), good);
                return;
            }

            good = State;
        }

        Failure = new NonFinite("winding temperature", TimeSeconds, good);
    }
}
