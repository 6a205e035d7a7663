using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Outcomes;

/// <summary>Watches every step of one run: loss of sync, settling, supply and heat, and the trace where one is wanted.</summary>
internal sealed class MoveRecord
{
    private const double SupplyWindowSeconds = 0.010;

    private readonly MoveRun _run;
    private readonly double _ratio;
    private readonly double _slewEnd;
    private readonly double _ownSlewEnd;
    private readonly double _restStart;
    private readonly TraceRecorder? _trace;
    private readonly SwingWatch? _swing;
    private double _windowEnd = SupplyWindowSeconds;
    private double _windowCharge;
    private double _windowTime;
    private double _slewCharge;
    private double? _beyond;

    /// <summary>A record of a run that has not begun.</summary>
    /// <param name="run">The run.</param>
    /// <param name="ratio">Total reduction.</param>
    /// <param name="restSeconds">Time at the end of the run over which the final rest is averaged, s.</param>
    /// <param name="trace">Keeps the trace; null when none is wanted.</param>
    /// <param name="swing">Watches the swing of the rotor; null when it is not wanted.</param>
    public MoveRecord(MoveRun run, double ratio, double restSeconds, TraceRecorder? trace, SwingWatch? swing = null)
    {
        _run = run;
        _ratio = ratio;
        _slewEnd = run.Plan.SlewSeconds;
        _ownSlewEnd = run.ShaftPlan.SlewSeconds;
        _restStart = run.Plan.EndSeconds - restSeconds;
        _trace = trace;
        _swing = swing;
        Settle = new SettleTrail(run.Choice.StepSeconds, restSeconds);
        Settle.Reserve((long)((run.Plan.EndSeconds - _slewEnd) / run.Choice.StepSeconds) + MoveRun.BlockSteps);
    }

    /// <summary>Error of the payload against plan and periodic error in every step after the slew, rad.</summary>
    public SettleTrail Settle { get; }

    /// <summary>Means over the last part of the run.</summary>
    public RestMeans Rest { get; } = new();

    /// <summary>Time at which the load angle passed half a turn for the last time before sync was lost, s.</summary>
    public double? LostAt { get; private set; }

    /// <summary>Whether the drive was full-stepping then.</summary>
    public bool LostFullStepping { get; private set; }

    public double? SlipAt { get; private set; }

    public double PeakSupplyAmperes { get; private set; }

    public double MeanSupplyAmperes => _slewCharge / Math.Max(_ownSlewEnd, _run.Choice.StepSeconds);

    public double EnergyJoules { get; private set; }

    public double LowestBusVolts { get; private set; } = double.PositiveInfinity;

    public double HighestBusVolts { get; private set; } = double.NegativeInfinity;

    /// <summary>Mean copper loss of the axis' own slew as it would be at 20 degrees Celsius, W.</summary>
    public double SlewCopperWattsAt20 => _run.SlewColdJoules / Math.Max(_ownSlewEnd, _run.Choice.StepSeconds);

    // Compiled for speed at the first call, as the steps are (see MoveRun.RunTo).
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void See(in StepContext step)
    {
        MotorReading reading = _run.Reading;
        double h = step.StepSeconds;
        double time = step.StartSeconds + h;
        double lag = _run.LoadAngle;
        WatchSync(time, lag, _run.FullStepping);
        if (SlipAt is null && _run.SlipRadians != 0.0)
        {
            SlipAt = time;
        }

        WatchSupply(time, h, reading);
        double planned = step.PlanEndRadians / _ratio, settleError = _run.PointingRadians - planned;
        if (time > _slewEnd)
        {
            Settle.Add(settleError);
        }

        if (time > _restStart)
        {
            Rest.Add(_run, planned);
        }

        _swing?.See(time, lag, _run.PlanFullSteps, _run.FullStepping);
        _trace?.See(step, reading, planned, lag, settleError, _beyond ?? double.NaN);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void WatchSync(double time, double lag, bool fullStepping)
    {
        double size = Math.Abs(lag);
        if (LostAt is not null)
        {
            return;
        }

        if (size <= Math.PI)
        {
            _beyond = null;
        }
        else if (_beyond is null)
        {
            _beyond = time;
            LostFullStepping = fullStepping;
        }

        if (size > MoveRun.LostRadians)
        {
            LostAt = _beyond;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void WatchSupply(double time, double h, in MotorReading reading)
    {
        double charge = reading.SupplyAmperes * h;
        EnergyJoules += charge * reading.BusVolts;
        LowestBusVolts = Math.Min(LowestBusVolts, reading.BusVolts);
        HighestBusVolts = Math.Max(HighestBusVolts, reading.BusVolts);
        if (time <= Math.Max(_ownSlewEnd, h))
        {
            _slewCharge += charge;
        }

        _windowCharge += charge;
        _windowTime += h;
        if (time >= _windowEnd)
        {
            PeakSupplyAmperes = Math.Max(PeakSupplyAmperes, _windowCharge / _windowTime);
            _windowCharge = 0.0;
            _windowTime = 0.0;
            _windowEnd += SupplyWindowSeconds;
        }
    }
}

/// <summary>Hands each step to a record.</summary>
internal readonly struct MoveRecorder(MoveRecord record) : IStepObserver
{
    public static bool Wants => true;

    public void See(in StepContext step, MoveRun run) => record.See(step);
}
