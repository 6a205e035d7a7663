using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Reductions;

/// <summary>How the total reduction of an axis changes speed, acceleration, torque, resolution, margin and settling, closed form and simulated.</summary>
/// <remarks>
/// A margin m is kept by simulating with inertia, imbalance and friction of the axis times <c>1 + m</c>. Rates are tried at the scenario's ramp time, accelerations at its
/// slew rate, or less where that is too fast, with ramps down to one swing of the axis on its train. All questions of a round are asked together.
/// </remarks>
public static class ReductionStudy
{
    /// <summary>Accelerations are tried at this share of the closed form's greatest rate at most: near that rate the speed itself takes the torque.</summary>
    public const double AccelerationRateShare = 0.5;

    /// <summary>Rates below this share of the scenario's own are not tried: such moves take longest and teach nothing more.</summary>
    public const double LeastRateShare = 0.1;

    private const double UsualRuns = 16.0;
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
        var progress = new StageShare(options.Progress);
        var ask = new Asker(new QuestionOptions { StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop, Counted = progress.Count });
        var law = new ReductionLaw(setup, axis, options.MarginShare);
        ReductionWork[] works = [.. options.TotalRatios.Append(own).Distinct().Order().Select(ratio => new ReductionWork(setup, axis, law, ratio, options.MarginShare))];
        progress.Begin(0.0, RatesShare, works.Length * UsualRuns);
        EdgeFinder.Find(ask, [.. works.Select(work => work.RateQuestion)]);
        foreach (ReductionWork work in works)
        {
            work.PrepareAccelerations();
        }

        progress.Begin(RatesShare, AccelerationsShare, works.Length * UsualRuns);
        EdgeFinder.Find(ask, [.. works.Select(work => work.Accelerations.Question(acceleration => [new BatchCase(work.AtAcceleration(acceleration), axis)]))]);
        progress.Begin(RatesShare + AccelerationsShare, CausesShare, works.Length * Enum.GetValues<OneChange>().Length);
        Limits(ask, works);
        options.Progress?.Invoke(RatesShare + AccelerationsShare + CausesShare);
        ReductionPoint[] points = Moves(works, options);
        options.Progress?.Invoke(1.0);
        LoadOwn(ask, works, points);
        return new ReductionResult
        {
            Points = points,
            Own = points.Single(point => point.Facts.TotalReduction == own),
            Match = law.Match,
            AtOptimum = double.IsFinite(law.Match.OptimumRatio) ? law.At(law.Match.OptimumRatio) : null,
            Window = ReductionWindow.Of(setup, axis, options.MarginShare),
            MarginShare = options.MarginShare,
            MovesRun = (int)ask.Runs + points.Count(point => point.OwnMove is not null),
        };
    }

    /// <summary>What stands against a greater rate: the end of the search, or what makes the first failing rate fail.</summary>
    private static void Limits(Asker ask, ReductionWork[] works)
    {
        foreach (ReductionWork work in works.Where(work => work.FailingRate is null))
        {
            work.Bound = work.Top;
        }

        ReductionWork[] failing = [.. works.Where(work => work.FailingRate is not null)];
        BatchCase[] first = [.. failing.Select(work => new BatchCase(work.AtRate(work.FailingRate!.Value), work.Axis))];
        LimitFinding[] findings = LimitStudy.Find(ask, [.. first.Zip(ask.Ask(first))]);
        for (int i = 0; i < failing.Length; i++)
        {
            (failing[i].Bound, failing[i].Shares) = (findings[i].Limit, findings[i].Shares);
        }
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

    /// <summary>Load factors of the own moves that arrive, all together.</summary>
    private static void LoadOwn(Asker ask, ReductionWork[] works, ReductionPoint[] points)
    {
        int[] arriving = [.. Enumerable.Range(0, points.Length).Where(i => points[i].OwnMove == MoveEnd.Arrives)];
        ValueSearch[] searches = [.. arriving.Select(_ => LoadFactors.Search(fromBelow: false))];
        EdgeFinder.Find(ask, [.. arriving.Zip(searches).Select(one => one.Second.Question(factor => [new BatchCase(works[one.First].Setup.Loaded(works[one.First].Axis, factor), works[one.First].Axis)]))]);
        foreach ((int i, ValueSearch search) in arriving.Zip(searches))
        {
            points[i] = points[i] with { OwnLoadFactor = LoadFactors.Result(search) };
        }
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
            SafeRateRadiansPerSecond = work.GreatestRate ?? double.NaN,
            FirstFailingRateRadiansPerSecond = work.FailingRate ?? double.NaN,
            Bound = work.Bound,
            Shares = work.Shares,
            SafeAccelerationRadiansPerSecondSquared = work.Accelerations.Good ?? double.NaN,
            AccelerationFailure = work.Accelerations.BadEnd,
            AccelerationTriedAtRadiansPerSecond = work.AccelerationRate,
            TorqueAtSlewNewtonMetres = work.Gain * PullOutSearch.At(work.Setup, work.Axis, full, speed).LeastNewtonMetres,
            OwnShares = TorqueShares.Hardest(work.Setup, work.Axis),
            OwnMove = outcome?.Verdict,
            OwnMargin = outcome?.Margin.Value ?? double.NaN,
            OwnLoadFactor = null,
            OwnSettleSeconds = outcome is { Verdict: MoveEnd.Arrives } ? outcome.Settling?.AgainstRestSeconds ?? double.NaN : double.NaN,
        };
    }
}
