using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>What to compute of a move besides running it.</summary>
public sealed record MoveOptions
{
    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Keep every step in the trace instead of some thousands of samples.</summary>
    public bool FullTrace { get; init; }

    /// <summary>Search the load factor, or the cause and the cures of a failure.</summary>
    public bool Explain { get; init; } = true;

    /// <summary>Called with what is being done and its share done, 0 to 1; from several threads at once.</summary>
    public Action<string, double>? Progress { get; init; }
}

/// <summary>A run that was stopped because a quantity was no longer a finite number.</summary>
/// <param name="Quantity">Which quantity.</param>
/// <param name="TimeSeconds">When, s.</param>
/// <param name="LastGoodRotorRadians">Rotor angle one step before, rad.</param>
/// <param name="LastGoodRotorSpeed">Rotor speed one step before, rad/s.</param>
/// <param name="LastGoodAxisRadians">Axis angle one step before, rad.</param>
/// <param name="LastGoodAxisSpeed">Axis speed one step before, rad/s.</param>
public sealed record BrokenRun(string Quantity, double TimeSeconds, double LastGoodRotorRadians, double LastGoodRotorSpeed, double LastGoodAxisRadians, double LastGoodAxisSpeed);

/// <summary>Everything that simulating one axis gives.</summary>
/// <param name="Outcome">Outcome.</param>
/// <param name="Trace">Samples.</param>
/// <param name="Curves">Pull-out curves that the move meets, with its path.</param>
/// <param name="Diagnosis">Cause and cures; null when it arrives or was not asked for.</param>
/// <param name="Step">The step in use, and why.</param>
/// <param name="Broken">Set when the run was stopped by a number that is not finite.</param>
public sealed record AxisResult(AxisOutcome Outcome, Trace Trace, TorqueSpeedCurves Curves, Diagnosis? Diagnosis, StepChoice Step, BrokenRun? Broken);

/// <summary>Simulates the move of one axis and explains its outcome.</summary>
public static class MoveStudy
{
    private const int Samples = 6000;

    /// <summary>Time at the end of the run over which the final rest is averaged, s; while tracking, two full steps or more pass in it and the ripple averages out.</summary>
    private const double RestWindowSeconds = 0.2;

    private const double TrackingWindowSeconds = 2.0;

    /// <summary>The jump as the current falls: from the mean over 20 ms before to the mean over 20 ms that begin 50 ms later, so that slow drift hardly counts.</summary>
    private const double JumpWindowSeconds = 0.02;

    private const double JumpGapSeconds = 0.05;

    /// <summary>Runs one axis; the other follows its own plan.</summary>
    public static AxisResult Run(MountSetup setup, MountAxis axis, MoveOptions options)
    {
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        options.Progress?.Invoke("simulating", 0.0);
        var run = new MoveRun(setup, axis, plan, options.StepSeconds);
        double ratio = model.Train.TotalRatio;
        var record = new MoveRecord(run, model.Motor.RotorTeeth, ratio, options.FullTrace ? 0.0 : plan.EndSeconds / Samples);
        var recorder = new MoveRecorder(record);
        const int Parts = 20;
        bool whole = true;
        for (int part = 1; part <= Parts && whole; part++)
        {
            whole = run.RunTo(plan.EndSeconds * part / Parts, ref recorder, stopWhenLost: false);
            options.Progress?.Invoke("simulating", (double)part / Parts);
        }

        BrokenRun? broken = run.Failure is { } failure
            ? new BrokenRun(failure.Quantity, failure.TimeSeconds, failure.LastGood.Rotor, failure.LastGood.RotorSpeed, failure.LastGood.Axis, failure.LastGood.AxisSpeed)
            : null;
        TorqueSpeedCurves curves = CurveStudy.ForMove(setup, axis, plan);
        FillTorques(record.Trace, setup, axis, plan, curves);
        AxisOutcome outcome = Judge(setup, axis, plan, run, record, curves);
        if (broken is not null || !options.Explain)
        {
            return new AxisResult(outcome, record.Trace, curves, null, run.Choice, broken);
        }

        double step = run.Choice.StepSeconds;
        if (outcome.Verdict is Verdict.Arrives or Verdict.DoesNotSettle)
        {
            options.Progress?.Invoke("searching the load factor", 0.0);
            LoadFactor factor = LoadFactorStudy.Of(setup, axis, step, share => options.Progress?.Invoke("searching the load factor", share));
            return new AxisResult(outcome with { LoadFactor = factor }, record.Trace, curves, null, run.Choice, null);
        }

        Diagnosis diagnosis = FailureStudy.Run(setup, axis, outcome, curves, step, share => options.Progress?.Invoke("searching cause and cure", share));
        return new AxisResult(outcome, record.Trace, curves, diagnosis, run.Choice, null);
    }

    private static AxisOutcome Judge(MountSetup setup, MountAxis axis, MovePlan plan, MoveRun run, MoveRecord record, TorqueSpeedCurves curves)
    {
        AxisModel model = setup.Axis(axis);
        double ratio = model.Train.TotalRatio;
        double tolerance = setup.Move.SettleToleranceRadians;
        LossOfSync? loss = Loss(axis, plan, record, ratio);
        Settling? settling = loss is null && record.SettleCount > 0 ? Settle(setup, model, axis, plan, run, record, tolerance) : null;
        Verdict verdict = loss is not null ? Verdict.Stalls
            : record.SlipAt is not null ? Verdict.ClutchSlips
            : settling?.AgainstRestSeconds is null ? Verdict.DoesNotSettle
            : Verdict.Arrives;
        return new AxisOutcome
        {
            Axis = axis,
            Verdict = verdict,
            Loss = loss,
            LostFullSteps = loss is null ? 0 : (int)(4.0 * LostTurns(run)),
            ClutchSlipSeconds = record.SlipAt,
            ClutchSlipRadians = run.Dynamics.State.Slip,
            Margin = CurveStudy.LeastMargin(curves),
            SlewSeconds = plan.SlewSeconds,
            Settling = settling,
            Offset = Offset(setup, axis, run, ratio),
            Power = Power(setup, model, run, record),
            Facts = Facts.Of(setup, axis),
            StepSeconds = run.Choice.StepSeconds,
        };
    }

    private static LossOfSync? Loss(MountAxis axis, MovePlan plan, MoveRecord record, double ratio)
    {
        if (record.LostAt is not { } time)
        {
            return null;
        }

        MotorPlan own = plan.At(axis);
        double rate = own.Velocity(time);
        double change = own.Acceleration(time) * rate;
        MovePhase phase = time > own.SlewSeconds ? MovePhase.Following
            : change > 0.0 ? MovePhase.Accelerating
            : change < 0.0 ? MovePhase.Decelerating
            : MovePhase.Slewing;
        return new LossOfSync(time, rate, rate * ratio, phase, record.LostFullStepping);
    }

    private static Settling Settle(MountSetup setup, AxisModel model, MountAxis axis, MovePlan plan, MoveRun run, MoveRecord record, double tolerance)
    {
        double step = run.Choice.StepSeconds;
        ReadOnlySpan<double> errors = record.SettleErrors;
        bool tracks = setup.Move.FollowUp == FollowUp.Sidereal && axis == MountAxis.Polar;
        double restWindow = Math.Min(tracks ? TrackingWindowSeconds : RestWindowSeconds, 0.25 * setup.Move.ObserveSeconds);
        double rest = Mean(errors[^Math.Min(errors.Length, (int)Math.Ceiling(restWindow / step))..]);
        double fall = plan.At(axis).SlewSeconds + model.Drive.CurrentFallDelaySeconds - record.SettleStart;
        int before = (int)(fall / step);
        int window = (int)(JumpWindowSeconds / step);
        double after = tracks ? model.Drive.TrackingCurrentAmperes : model.Drive.HoldingCurrentAmperes;
        int later = before + (int)(JumpGapSeconds / step);
        double? jump = before - window >= 0 && later + window < errors.Length && after != model.Drive.SlewCurrentAmperes
            ? Mean(errors.Slice(later, window)) - Mean(errors[(before - window)..before])
            : null;
        double direction = Math.Sign(plan.At(axis).Position(plan.SlewSeconds) - plan.At(axis).Position(0.0));
        return new Settling(
            SettleLaw.Time(errors, step, rest, tolerance),
            SettleLaw.Time(errors, step, 0.0, tolerance),
            SettleLaw.Overshoot(errors, rest, direction == 0.0 ? 1.0 : direction),
            jump,
            tolerance,
            rest);
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0.0;
        foreach (double value in values)
        {
            sum += value;
        }

        return sum / Math.Max(1, values.Length);
    }

    private static OffsetSplit Offset(MountSetup setup, MountAxis axis, MoveRun run, double ratio)
    {
        AxisState state = run.Dynamics.State;
        double plan = run.ShaftPlan.Position(run.TimeSeconds) / ratio;
        AxisParameters parameters = run.Dynamics.Parameters;
        double worm = run.Dynamics.WormAxisAngle;
        WormStage stage = setup.Axis(axis).Train.Worm;
        double periodic = PeriodicErrorLaw.Value(stage.PeriodicError, stage.Ratio, worm);
        double twist = worm + periodic - state.Axis - state.Slip;
        double elastic = parameters.Mesh.DeadZone(twist);

        // What gravity and wind alone would wind the mesh up by; the rest of the elastic twist is held by friction.
        double carried = -run.Dynamics.Load.Outside(state.Axis, run.TimeSeconds) / parameters.Mesh.Stiffness;
        double payload = parameters.PayloadInertia > 0.0 ? state.Payload : state.Axis;
        double lost = LostTurns(run) * 2.0 * Math.PI / (setup.Axis(axis).Motor.RotorTeeth * ratio);
        return new OffsetSplit(
            payload - plan,
            elastic - twist,
            worm - plan - lost - carried,
            carried - elastic,
            periodic,
            payload - state.Axis,
            lost - state.Slip);
    }

    /// <summary>Electrical turns by which the rotor has slipped against its command.</summary>
    private static double LostTurns(MoveRun run) => Math.Round(run.LoadAngle / (2.0 * Math.PI));

    private static PowerAndHeat Power(MountSetup setup, AxisModel model, MoveRun run, MoveRecord record)
    {
        var heat = new WindingHeat(setup.Disturbances.AmbientCelsius, model.Motor.ThermalResistanceKelvinPerWatt, model.Motor.ThermalTimeConstantSeconds);
        return new PowerAndHeat(
            record.PeakSupplyAmperes,
            record.MeanSupplyAmperes,
            record.EnergyJoules,
            record.LowestBusVolts,
            record.HighestBusVolts,
            run.Dynamics.Motor.Celsius,
            heat.Balance(record.SlewCopperWattsAt20),
            model.Motor.Insulation.LimitCelsius(),
            model.Motor.Insulation);
    }

    private static void FillTorques(Trace trace, MountSetup setup, MountAxis axis, MovePlan plan, TorqueSpeedCurves curves)
    {
        var need = new ShaftNeed(setup, axis, plan);
        double changeover = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        foreach (double time in trace.TimeSeconds)
        {
            (double speed, double torque) = need.At(time);
            trace.NeededTorqueNewtonMetres.Add(torque);
            trace.AvailableTorqueNewtonMetres.Add(CurveStudy.Available(curves, Math.Abs(speed) > changeover, Math.Abs(speed)));
        }
    }
}
