using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Outcomes;

/// <summary>Watches every step of one run: trace, loss of sync, settling, supply and heat.</summary>
internal sealed class MoveRecord
{
    private const double SupplyWindowSeconds = 0.010;
    private const double CloseSampleSeconds = 0.001;
    private const double CloseSeconds = 1.0;
    private const double CloseLostSeconds = 0.2;

    private readonly MoveRun _run;
    private readonly double _ratio;
    private readonly double _slewEnd;
    private readonly double _ownSlewEnd;
    private readonly double _restStart;
    private readonly double _sampleSeconds;
    private double _nextSample;
    private double _windowEnd = SupplyWindowSeconds;
    private double _windowCharge;
    private double _windowTime;
    private double _sampleTorque;
    private double _sampleMotorSpeed;
    private double _sampleSaturated;
    private double _sampleCharge;
    private double _sampleTime;
    private double _slewCharge;
    private double? _beyond;

    public MoveRecord(MoveRun run, double ratio, double restSeconds, double sampleSeconds)
    {
        _run = run;
        _ratio = ratio;
        _slewEnd = run.Plan.SlewSeconds;
        _ownSlewEnd = run.ShaftPlan.SlewSeconds;
        _restStart = run.Plan.EndSeconds - restSeconds;
        _sampleSeconds = sampleSeconds;
        Settle = new SettleTrail(run.Choice.StepSeconds, restSeconds);
    }

    public Trace Trace { get; } = new();

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
        if (time > _slewEnd)
        {
            Settle.Add(_run.PointingRadians - (step.PlanEndRadians / _ratio));
        }

        if (time > _restStart)
        {
            Rest.Add(_run, step.PlanEndRadians / _ratio);
        }

        _sampleTorque += _run.MotorTorque * h;
        _sampleMotorSpeed += _run.State.RotorSpeed * h;
        _sampleSaturated += reading.Saturated ? h : 0.0;
        _sampleCharge += reading.SupplyAmperes * h;
        _sampleTime += h;
        if (time >= _nextSample - (0.5 * h))
        {
            Sample(time, lag, step);
        }
    }

    /// <summary>Samples lie closer where things happen fast: just after the slew, and where sync is about to be lost.</summary>
    private double Spacing(double time, double lag)
    {
        bool settling = time > _slewEnd && time < _slewEnd + CloseSeconds;
        bool losing = Math.Abs(lag) > 0.6 * Math.PI && (LostAt is not { } lost || time < lost + CloseLostSeconds);
        return settling || losing ? Math.Min(_sampleSeconds, CloseSampleSeconds) : _sampleSeconds;
    }

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

    private void Sample(double time, double lag, in StepContext step)
    {
        AxisState state = _run.State;
        MotorReading reading = _run.Reading;
        double planned = step.PlanEndRadians / _ratio;
        double payload = _run.PayloadRadians;
        (double a, double b) = _run.Currents;
        Trace.TimeSeconds.Add(time);
        Trace.PlannedAngleRadians.Add(planned);
        Trace.PlannedRateRadiansPerSecond.Add(step.PlanRateRadiansPerSecond / _ratio);
        Trace.ActualRateRadiansPerSecond.Add(state.AxisSpeed);
        Trace.MotorSpeedRadiansPerSecond.Add(_sampleMotorSpeed / _sampleTime);
        Trace.AxisErrorRadians.Add(state.Axis - planned);
        Trace.PayloadErrorRadians.Add(payload - planned);
        Trace.SettleErrorRadians.Add(payload - planned - _run.PeriodicErrorRadians);
        Trace.LoadAngleRadians.Add(lag);
        Trace.MotorTorqueNewtonMetres.Add(_sampleTorque / _sampleTime);
        Trace.PhaseACurrentAmperes.Add(a);
        Trace.PhaseBCurrentAmperes.Add(b);
        Trace.SaturationShare.Add(_sampleSaturated / _sampleTime);
        Trace.BusVolts.Add(reading.BusVolts);
        Trace.SupplyCurrentAmperes.Add(_sampleCharge / _sampleTime);
        Trace.WindingCelsius.Add(_run.Celsius);
        Trace.MeshTorqueNewtonMetres.Add(_run.MeshTorque);
        Trace.ClutchSlipRadians.Add(state.Slip);
        Trace.FullStepping.Add(_run.FullStepping ? 1.0 : 0.0);
        (_sampleTorque, _sampleMotorSpeed, _sampleSaturated, _sampleCharge, _sampleTime) = (0.0, 0.0, 0.0, 0.0, 0.0);
        _nextSample = time + Spacing(time, lag);
    }
}

/// <summary>Hands each step to a record.</summary>
internal readonly struct MoveRecorder(MoveRecord record) : IStepObserver
{
    public static bool Wants => true;

    public void See(in StepContext step, MoveRun run) => record.See(step);
}
