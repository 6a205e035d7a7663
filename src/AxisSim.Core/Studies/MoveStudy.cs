using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Studies;

/// <summary>What to compute of a move besides running it.</summary>
public sealed record MoveOptions
{
    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Takes every step of the run as it is made; null when the trace is enough.</summary>
    public IStepSink? EveryStep { get; init; }

    /// <summary>Search how near the edge is in load and rate, and the cause and the cures of a failure.</summary>
    public bool Explain { get; init; } = true;

    /// <summary>Threads for these searches; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Ends these searches early with an exception.</summary>
    public CancellationToken Stop { get; init; }

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
/// <param name="Trace">The run, stretch by stretch.</param>
/// <param name="Curves">Pull-out curves that the move meets, with its path.</param>
/// <param name="Diagnosis">Cause and cures; null when it arrives or was not asked for.</param>
/// <param name="Step">The step in use, and why.</param>
/// <param name="Broken">Set when the run was stopped by a number that is not finite.</param>
public sealed record AxisResult(AxisOutcome Outcome, Trace Trace, TorqueSpeedCurves Curves, Diagnosis? Diagnosis, StepChoice Step, BrokenRun? Broken)
{
    /// <summary>How near the edge is in slew rate; null when it was not asked for.</summary>
    public GreatestRate? Rates { get; init; }

    /// <summary>What would lift a thin load factor to the usual one; null when it is not thin, or was not asked for.</summary>
    public Cures? Lifts { get; init; }
}

/// <summary>Simulates the move of one axis and explains its outcome.</summary>
public static class MoveStudy
{
    /// <summary>A tolerance that much wider or narrower tells whether a peak grazes the band, rad (0.05 arcsec).</summary>
    private const double GrazeRadians = 0.05 * Math.PI / 648000.0;

    private const double GrazeSeconds = 1e-3;

    /// <summary>The run pauses this long before the fall, a block or more, s.</summary>
    private const double BeforeFallSeconds = 1e-3;

    /// <summary>Time after the fall of the current at which the axis is compared with a twin whose current does not fall, s.</summary>
    private const double JumpSeconds = 0.15;

    /// <summary>The step that a run of one axis would take when <paramref name="askedSeconds"/> is asked for.</summary>
    public static StepChoice Step(MountSetup setup, MountAxis axis, double askedSeconds) => StepChoice.For(setup, axis, askedSeconds);

    /// <summary>Runs one axis; the other follows its own plan.</summary>
    /// <exception cref="ArgumentException">The setup will not do (<see cref="SetupChecks"/>); the message lists all problems.</exception>
    public static AxisResult Run(MountSetup setup, MountAxis axis, MoveOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.Require(setup, axis, options.StepSeconds);
        return RunUnchecked(setup, axis, options);
    }

    /// <summary>The same for a setup that a study has derived from one that was checked.</summary>
    internal static AxisResult RunUnchecked(MountSetup setup, MountAxis axis, MoveOptions options)
    {
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        options.Progress?.Invoke("simulating", 0.0);
        TorqueSpeedCurves curves = CurveStudy.ForMove(setup, axis, plan);
        var run = new MoveRun(setup, axis, plan, options.StepSeconds);
        double ratio = model.Train.TotalRatio;
        var planned = new PlannedTorques(setup, axis, plan, curves);
        var share = new SwingShare(setup, axis, plan, planned.Need);
        var trace = new TraceRecorder(run, ratio, planned.At, share.Held, planned.SmoothSeconds, options.EveryStep);
        var swing = new SwingWatch(model.Drive, Facts.Of(setup, axis).RotorResonanceHertz, run.Choice.StepSeconds, share.Of);
        var record = new MoveRecord(run, ratio, SettleJudge.Of(setup, axis).RestSeconds, trace, swing);
        var recorder = new MoveRecorder(record);
        double fall = run.ShaftPlan.SlewSeconds + model.Drive.CurrentFallDelaySeconds;
        bool whole = RunTo(run, ref recorder, 0.0, Math.Min(plan.EndSeconds, fall - BeforeFallSeconds), plan.EndSeconds, options);
        double? jump = whole && fall + JumpSeconds < plan.EndSeconds ? Jump(run, ref recorder, fall + JumpSeconds) : null;
        whole = whole && RunTo(run, ref recorder, run.TimeSeconds, plan.EndSeconds, plan.EndSeconds, options);
        BrokenRun? broken = run.Failure is { } failure
            ? new BrokenRun(failure.Quantity, failure.TimeSeconds, failure.LastGood.Rotor, failure.LastGood.RotorSpeed, failure.LastGood.Axis, failure.LastGood.AxisSpeed)
            : null;
        trace.Finish(record.LostAt);
        AxisOutcome outcome = Judge(setup, axis, plan, run, record, jump, curves);
        outcome = outcome with { Swing = outcome.Verdict is MoveEnd.Stalls or MoveEnd.Broken ? null : swing.Greatest is { } at ? share.At(at.Angle, at.Seconds, at.FullStepping) : null };
        if (broken is not null || !options.Explain)
        {
            return new AxisResult(outcome, trace.Trace, curves, null, run.Choice, broken);
        }

        if (outcome.Settling is { } settling)
        {
            HalfStepRest? half = RestAtHalfStep.Of(setup, axis, plan, run.Choice.StepSeconds, share => options.Progress?.Invoke("simulating at half the step", share));
            outcome = outcome with { Settling = settling with { HalfStep = half } };
        }

        bool arrives = outcome.Verdict is MoveEnd.Arrives or MoveEnd.DoesNotSettle;
        string doing = arrives ? "looking for the edge" : "searching cause and cure";
        options.Progress?.Invoke(doing, 0.0);
        MoveAnswers answers = MoveAnswers.Of(
            setup, axis, arrives, new QuestionOptions { StepSeconds = run.Choice.StepSeconds, Threads = options.Threads, Stop = options.Stop }, share => options.Progress?.Invoke(doing, share));
        return new AxisResult(outcome with { LoadFactor = answers.LoadFactor }, trace.Trace, curves, answers.Diagnosis, run.Choice, null) { Rates = answers.Rates, Lifts = answers.Lifts };
    }

    private static AxisOutcome Judge(MountSetup setup, MountAxis axis, MovePlan plan, MoveRun run, MoveRecord record, double? jump, TorqueSpeedCurves curves)
    {
        AxisModel model = setup.Axis(axis);
        double ratio = model.Train.TotalRatio;
        LossOfSync? loss = Loss(axis, plan, record, ratio);
        Settling? settling = loss is null && record.Settle.Count > 0 ? Settle(setup, model, axis, plan, run, record, jump) : null;
        MoveEnd verdict = run.Failure is not null ? MoveEnd.Broken
            : loss is not null ? MoveEnd.Stalls
            : record.SlipAt is not null ? MoveEnd.ClutchSlips
            : settling?.AgainstRestSeconds is null ? MoveEnd.DoesNotSettle
            : MoveEnd.Arrives;
        return new AxisOutcome
        {
            Axis = axis,
            Verdict = verdict,
            Loss = loss,
            LostFullSteps = loss is null ? 0 : (int)(4.0 * LostTurns(run)),
            ClutchSlipSeconds = record.SlipAt,
            ClutchSlipRadians = run.SlipRadians,
            Margin = CurveStudy.LeastMargin(curves),
            SlewSeconds = plan.SlewSeconds,
            Settling = settling,
            Offset = Offset(setup, axis, run, record.Rest, ratio),
            Power = Power(setup, axis, run, record),
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

    private static bool RunTo(MoveRun run, ref MoveRecorder recorder, double from, double until, double end, MoveOptions options)
    {
        const double Part = 0.05;
        for (double at = from; at < until;)
        {
            at = Math.Min(until, at + (Part * end));
            if (!run.RunTo(at, ref recorder, stopWhenLost: false))
            {
                return false;
            }

            options.Progress?.Invoke("simulating", at / end);
        }

        return true;
    }

    /// <summary>How far the axis is moved by the fall of the current: it is compared with a twin that keeps its current, so that ringing, backlash and tracking drop out.</summary>
    private static double? Jump(MoveRun run, ref MoveRecorder recorder, double until)
    {
        MoveRun twin = run.TwinWithSteadyCurrent();
        var none = default(NoObserver);
        return run.RunTo(until, ref recorder, stopWhenLost: false) && twin.RunTo(until, ref none, stopWhenLost: false)
            ? run.State.Axis - twin.State.Axis
            : null;
    }

    private static Settling Settle(MountSetup setup, AxisModel model, MountAxis axis, MovePlan plan, MoveRun run, MoveRecord record, double? jump)
    {
        SettleJudge judge = SettleJudge.Of(setup, axis);
        double tolerance = judge.ToleranceRadians;
        SettleTrail errors = record.Settle;
        double rest = errors.Rest;
        double? settled = judge.Within(errors, rest, tolerance);
        double? wider = judge.Within(errors, rest, tolerance + GrazeRadians);
        double? narrower = judge.Within(errors, rest, tolerance - Math.Min(GrazeRadians, 0.5 * tolerance));
        bool grazes = settled is { } time && (narrower is null || narrower - time > GrazeSeconds || time - wider > GrazeSeconds);
        double direction = Math.Sign(plan.At(axis).Position(plan.SlewSeconds) - plan.At(axis).Position(0.0));
        double after = setup.Tracks(axis) ? model.Drive.TrackingCurrentAmperes : model.Drive.HoldingCurrentAmperes;
        return new Settling(
            settled,
            judge.Within(errors, -record.Rest.Periodic, tolerance),
            errors.Overshoot(rest, direction == 0.0 ? 1.0 : direction),
            after == model.Drive.SlewCurrentAmperes ? null : jump,
            tolerance,
            record.Rest.Payload,
            errors.RestSwing(rest),
            grazes);
    }

    private static OffsetSplit Offset(MountSetup setup, MountAxis axis, MoveRun run, RestMeans rest, double ratio)
    {
        // What gravity and wind alone would wind the mesh up by; the rest of the elastic twist is held by friction.
        double carried = -run.Outside(run.State.Axis, run.TimeSeconds) / run.Parameters.Mesh.Stiffness;
        double lost = LostTurns(run) * 2.0 * Math.PI / (setup.Axis(axis).Motor.RotorTeeth * ratio);
        return new OffsetSplit(
            rest.Payload,
            rest.Elastic - rest.Twist,
            rest.Worm - lost - carried,
            carried - rest.Elastic,
            rest.Periodic,
            rest.Bend,
            lost - rest.Slip);
    }

    /// <summary>Electrical turns by which the rotor has slipped against its command.</summary>
    private static double LostTurns(MoveRun run) => Math.Round(run.LoadAngle / (2.0 * Math.PI));

    private static PowerAndHeat Power(MountSetup setup, MountAxis axis, MoveRun run, MoveRecord record)
    {
        StepperMotor motor = setup.Axis(axis).Motor;
        ContinuousHeat endless = ContinuousHeat.Of(setup, axis, record.SlewCopperWattsAt20);
        return new PowerAndHeat(
            record.PeakSupplyAmperes,
            record.MeanSupplyAmperes,
            record.EnergyJoules,
            record.LowestBusVolts,
            record.HighestBusVolts,
            run.Celsius,
            endless.Celsius,
            endless.Duty,
            motor.Insulation.LimitCelsius(),
            motor.Insulation);
    }
}
