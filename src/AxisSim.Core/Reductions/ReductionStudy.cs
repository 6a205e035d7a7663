using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Reductions;

/// <summary>How the total reduction of an axis changes speed, acceleration, torque, resolution, margin and settling, closed form and simulated.</summary>
/// <remarks>
/// A margin m of the motor's torque is kept in hand by simulating with inertia, imbalance and friction of the axis times <c>1/(1 - m)</c>. Rates are tried at the
/// scenario's ramp time, accelerations at its slew rate, or less where that is too fast, with ramps down to one swing of the axis on its train. All questions of a round are asked together.
/// </remarks>
public static class ReductionStudy
{
    /// <summary>Accelerations are tried at this share of the closed form's greatest rate at most: near that rate the speed itself takes the torque.</summary>
    public const double AccelerationRateShare = 0.5;

    /// <summary>Rates below this share of the scenario's own are not tried: such moves take longest and teach nothing more.</summary>
    public const double LeastRateShare = 0.1;

    private const double RatesShare = 0.3, AccelerationsShare = 0.3, CausesShare = 0.05;

    /// <summary>Runs the study.</summary>
    /// <param name="setup">The mount and its move; the axis must turn in it.</param>
    /// <param name="axis">Which axis.</param>
    /// <param name="options">Reductions and margin.</param>
    /// <exception cref="ArgumentException">The setup will not do (<see cref="SetupChecks"/>); the message lists all problems.</exception>
    public static ReductionResult Run(MountSetup setup, MountAxis axis, ReductionOptions options)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.Require(setup, axis, options.StepSeconds);
        double own = setup.Axis(axis).Train.TotalRatio;
        var batch = new ReductionBatch(axis, options);
        var law = new ReductionLaw(setup, axis, options.MarginShare);
        ReductionWork[] works = [.. options.TotalRatios.Append(own).Distinct().Order().Select(ratio => new ReductionWork(setup, axis, law, ratio, options.MarginShare))];
        batch.Search(works, work => work.Rates, (work, rate) => work.AtRate(rate), 0.0, RatesShare, (work, rate, end) => work.TakeRate(rate, end));
        foreach (ReductionWork work in works)
        {
            work.PrepareAccelerations();
        }

        batch.Search(works, work => work.Accelerations, (work, acceleration) => work.AtAcceleration(acceleration), RatesShare, AccelerationsShare, (work, acceleration, end) => work.TakeAcceleration(acceleration, end));
        ReductionCause.Find(works, batch);
        options.Progress?.Invoke(RatesShare + AccelerationsShare + CausesShare);
        ReductionPoint[] points = Moves(works, options);
        options.Progress?.Invoke(1.0);
        return new ReductionResult
        {
            Points = points,
            Own = points.Single(point => point.Facts.TotalReduction == own),
            Match = law.Match,
            AtOptimum = double.IsFinite(law.Match.OptimumRatio) ? law.At(law.Match.OptimumRatio) : null,
            Window = ReductionWindow.Of(setup, axis, options.MarginShare),
            MarginShare = options.MarginShare,
            MovesRun = batch.MovesRun + points.Count(point => point.OwnMove is not null),
        };
    }

    private static ReductionPoint[] Moves(ReductionWork[] works, ReductionOptions options)
    {
        var points = new ReductionPoint[works.Length];
        int done = 0;
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount, CancellationToken = options.Stop };
        const double before = RatesShare + AccelerationsShare + CausesShare;
        Parallel.For(0, works.Length, parallel, i =>
        {
            points[i] = Point(works[i], options.StepSeconds);
            options.Progress?.Invoke(before + ((1.0 - before) * Interlocked.Increment(ref done) / works.Length));
        });
        return points;
    }

    private static ReductionPoint Point(ReductionWork work, double stepSeconds)
    {
        AxisResult? move = MoveStudy.Step(work.Setup, work.Axis, stepSeconds).Workable ? MoveStudy.RunUnchecked(work.Setup, work.Axis, new MoveOptions { StepSeconds = stepSeconds, Explain = false }) : null;
        AxisOutcome? outcome = move is { Broken: null } ? move.Outcome : null;
        double speed = work.Facts.MotorSpeedRadiansPerSecond;
        bool full = speed > work.Model.Drive.ChangeoverRadiansPerSecond;
        return new ReductionPoint
        {
            Facts = work.Facts,
            SafeRateRadiansPerSecond = work.Rates.LastGood ?? double.NaN,
            FirstFailingRateRadiansPerSecond = work.Rates.FirstBad ?? double.NaN,
            Bound = work.Bound,
            Shares = work.Shares,
            SafeAccelerationRadiansPerSecondSquared = work.Accelerations.LastGood ?? double.NaN,
            AccelerationFailure = work.AccelerationEnd,
            AccelerationTriedAtRadiansPerSecond = work.AccelerationRate,
            TorqueAtSlewNewtonMetres = work.Gain * new PullOutRun(work.Model.Motor, work.Model.Drive, work.PullOutInertia, speed, full).Torque(),
            OwnShares = ReductionCause.Hardest(work.Setup, work.Axis),
            OwnMove = outcome?.Verdict,
            OwnMargin = outcome?.Margin.Value ?? double.NaN,
            OwnLoadFactor = outcome is { Verdict: Verdict.Arrives } && move is not null ? LoadFactorStudy.Of(work.Setup, work.Axis, move.Step.StepSeconds) : null,
            OwnSettleSeconds = outcome is { Verdict: Verdict.Arrives } ? outcome.Settling?.AgainstRestSeconds ?? double.NaN : double.NaN,
        };
    }
}
