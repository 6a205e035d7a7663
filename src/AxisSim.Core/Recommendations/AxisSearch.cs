using AxisSim.Core.Batches;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>Searches the settings of one axis: grid, greatest rates at the hardest cases, trade-off, choice, verification at every corner.</summary>
/// <remarks>
/// What fails in the verification joins the cases that every point must survive, and the choice is made again: so the answer holds at every corner that was
/// looked at, whatever the screening believed.
/// </remarks>
internal sealed class AxisSearch
{
    private const int HardMoves = 2;
    private const int MostRounds = 12;
    private const double StepBack = 0.92;

    /// <summary>Where the search reaches far beyond the file's rate, its steps grow with that.</summary>
    private const double TopShare = 0.25;

    /// <summary>The trade-off shows rates a little beyond what the margin allows, too.</summary>
    private const double Beyond = 1.15;

    /// <summary>Shares of the recommended rate at which a resonance is looked for.</summary>
    private static readonly double[] Below = [0.98, 0.95, 0.91, 0.86];

    private readonly MountSetup setup;
    private readonly MountAxis axis;
    private readonly RecommendOptions options;
    private readonly double resolution;
    private readonly Asker ask;
    private readonly StageProgress progress;
    private readonly IReadOnlyList<CheckMove> moves;
    private readonly CheckMove trade;
    private readonly List<LoadCase> loads = [];
    private readonly List<FrontPoint> tooHot = [];
    private Dictionary<double, HoldingCurrents> currents = [];

    public AxisSearch(MountSetup setup, MountAxis axis, RecommendOptions options)
    {
        (this.setup, this.axis, this.options) = (setup, axis, options);
        progress = new StageProgress(options.Progress);
        ask = new Asker(new QuestionOptions { Threads = options.Threads, StepSeconds = options.StepSeconds, Counted = progress.Count, Stop = options.Stop });
        moves = CheckMoves.Of(setup, axis, options.LatitudeRadians);
        trade = moves[0].Alone();
        AxisMotion motion = setup.Axis(axis).Motion;
        double top = RateCap.Of(trade.Apply(setup), axis, motion.RampInUseSeconds).RateRadiansPerSecond;
        resolution = RateSearch.Resolution(Math.Max(motion.SlewRateRadiansPerSecond, TopShare * top));
    }

    public AxisRecommendation Run()
    {
        AxisSettings file = AxisSettings.Of(setup, axis) with { SlewCurrentAmperes = setup.Axis(axis).Motor.RatedCurrentAmperes };
        progress.Begin("looking for the hardest move and corner", 0.0, 0.1, 700);
        CheckMove[] hard = Hardest(file);
        WorstCorner worst = WorstCorner.Find(ask, setup, file, [hard[0]], options.Tolerances, options.LoadFactor, RateFinder.ProbeRadians);
        loads.AddRange((options.Coarse ? hard.Take(1) : hard).Select(move => new LoadCase(move, worst.Factors)));

        IReadOnlyList<AxisSettings> bare = SearchedSettings.Of(setup, axis, options.Coarse);
        currents = RestCurrents.Of(ask, setup, trade, [.. bare.Select(settings => settings.SlewCurrentAmperes).Distinct()], Statics);
        IReadOnlyList<AxisSettings> grid = [.. bare.Select(WithCurrents)];
        var finder = new RateFinder(ask, options.LoadFactor, resolution);
        progress.Begin("searching the greatest rates", 0.1, 0.55, (long)grid.Count * loads.Count * RateSearch.Usual);
        GreatestRate[] rates = finder.Run([.. grid.Select(settings => new RateQuestion(setup, settings))], loads);
        AxisSettings[] candidates = [.. grid.Zip(rates).Where(pair => double.IsFinite(pair.Second.RateRadiansPerSecond)).SelectMany(pair => Rates(pair.First, pair.Second))];
        progress.Begin("weighing speed, margin, settling and heat", 0.55, 0.7, candidates.Length * (1L + (25L * loads.Count)));
        List<FrontPoint> points = Points(candidates);
        AxisRecommendation result = new()
        {
            Axis = axis, LoadFactor = options.LoadFactor, ResolutionRadiansPerSecond = resolution, Moves = moves, Worst = worst, Deciding = loads, Front = [],
        };
        progress.Begin("verifying at every corner", 0.7, 0.85, 3L * moves.Count * Corners(worst).Count);
        FrontPoint? chosen = Verified(points, worst, out Verification verified);
        result = result with { Front = ParetoFront.Of(points), Verified = verified, Deciding = [.. loads] };
        return chosen is null ? Without(result, grid, finder) : With(result, chosen, finder);
    }

    private AxisRecommendation With(AxisRecommendation result, FrontPoint chosen, RateFinder finder)
    {
        AxisSettings settings = chosen.Settings;
        (MountChange Change, RateQuestion Question)[] changes = options.Coarse ? [] : Changes(settings);
        progress.Begin("asking what would buy more", 0.85, 0.95, (1L + changes.Length) * loads.Count * RateSearch.Usual);
        GreatestRate[] rates = finder.Run([new RateQuestion(setup, settings), .. changes.Select(change => change.Question)], loads);
        progress.Begin("drawing mounts at random", 0.95, 1.0, options.Samples * 2L);
        double[] below = [.. Below.Select(share => Multiple(share * settings.SlewRateRadiansPerSecond))];
        BatchResult[] lower = ask.Ask([.. below.SelectMany(rate => loads.Select(load =>
        {
            AxisSettings slower = settings with { SlewRateRadiansPerSecond = rate };
            return load.With(setup, slower, options.LoadFactor, RateFinder.ProbeRadians(slower));
        }))]);
        CheckMove[] drawn = [.. loads.Select(load => load.Move).Distinct().Take(HardMoves)];
        return result with
        {
            Chosen = chosen,
            Currents = currents[settings.SlewCurrentAmperes],
            Binding = Hot(chosen) ? new Binding(Limit.Temperature, null, rates[0], 0.0) : Binding.Of(ask, setup, settings, rates[0], loads, options.LoadFactor),
            Sensitivities = [.. changes.Select((change, i) => new Sensitivity(change.Change, rates[i + 1].RateRadiansPerSecond))],
            Probability = StallProbability.Of(ask, setup, settings, drawn, options.Tolerances, options.Samples, options.Seed),
            Abort = AbortStudy.Of(setup, axis, settings, moves, options.Tolerances),
            FailingBelow = [.. below.Where((_, i) => lower.Skip(i * loads.Count).Take(loads.Count).Any(one => one.End != MoveEnd.Arrives))],
            Runs = ask.Runs,
        };
    }

    /// <summary>Nothing holds: the settings with the greatest load factor at a tenth of the file's rate, and what would cure it.</summary>
    private AxisRecommendation Without(AxisRecommendation result, IReadOnlyList<AxisSettings> grid, RateFinder finder)
    {
        double slow = Math.Max(resolution, Multiple(0.1 * setup.Axis(axis).Motion.SlewRateRadiansPerSecond));
        double longest = grid.Max(settings => settings.RampSeconds);
        List<FrontPoint> points = Points([.. grid.Where(settings => settings.RampSeconds == longest).Select(settings => settings with { SlewRateRadiansPerSecond = slow })]);
        FrontPoint? nearest = points.MaxBy(point => point.LoadFactor);
        AxisSettings at = nearest?.Settings ?? grid[^1] with { SlewRateRadiansPerSecond = slow };
        (MountChange Change, RateQuestion Question)[] changes = Changes(at);
        progress.Begin("asking what would cure it", 0.85, 1.0, (long)changes.Length * loads.Count * RateSearch.Usual);
        GreatestRate[] rates = finder.Run([.. changes.Select(change => change.Question)], loads);
        return result with
        {
            Nearest = nearest,
            Currents = currents[at.SlewCurrentAmperes],
            Sensitivities = [.. changes.Select((change, i) => new Sensitivity(change.Change, rates[i].RateRadiansPerSecond))],
            Runs = ask.Runs,
        };
    }

    private CheckMove[] Hardest(AxisSettings settings)
    {
        double most = RateFinder.ProbeRadians(settings);
        double[] factors = CornerFactors.Of(ask, [.. moves.Select(move => (Func<double, IEnumerable<BatchCase>>)(factor => [new LoadCase(move, ToleranceFactors.Nominal).With(setup, settings, factor, most)]))], options.LoadFactor);
        return [.. moves.Zip(factors).OrderBy(pair => pair.Second).Select(pair => pair.First).Take(HardMoves)];
    }

    private HoldingCurrents Statics(double slewAmperes) => HoldingCurrents.Of(setup, axis, moves, options.Tolerances, options.LoadFactor, slewAmperes);

    private AxisSettings WithCurrents(AxisSettings settings)
    {
        HoldingCurrents rest = currents[settings.SlewCurrentAmperes];
        return settings with { TrackingCurrentAmperes = rest.TrackingAmperes, HoldingCurrentAmperes = rest.HoldingAmperes };
    }

    private IEnumerable<AxisSettings> Rates(AxisSettings settings, GreatestRate rate) => SearchedSettings.RateShares(options.Coarse)
        .Append(Beyond)
        .Select(share => Math.Min(Multiple(share * rate.RateRadiansPerSecond), Multiple(rate.TopRadiansPerSecond)))
        .Where(value => value > 0.0)
        .Distinct()
        .Select(value => settings with { SlewRateRadiansPerSecond = value });

    // A faster point that holds, but would overheat.
    private bool Hot(FrontPoint chosen) => options.Aim == RecommendAim.Fastest && tooHot.Any(point => point.LoadFactor >= options.LoadFactor && point.TotalSeconds < chosen.TotalSeconds);

    private double Multiple(double rate) => Math.Floor((rate / resolution) + 1e-9) * resolution;

    /// <summary>The points that arrive and settle in the move of the trade-off, and do not overheat.</summary>
    private List<FrontPoint> Points(AxisSettings[] candidates)
    {
        BatchResult[] settled = ask.Ask([.. candidates.Select(settings => new LoadCase(trade, ToleranceFactors.Nominal).With(setup, settings, 1.0))], BatchDepth.Settling);
        double limit = Motors.InsulationLimits.LimitCelsius(setup.Axis(axis).Motor.Insulation);
        int[] good = [.. Enumerable.Range(0, candidates.Length).Where(i => settled[i].End == MoveEnd.Arrives)];
        double[] factors = Factors([.. good.Select(i => candidates[i])], loads, whole: false);
        FrontPoint[] all = [.. good.Select((i, k) => new FrontPoint(candidates[i], settled[i].SlewSeconds, settled[i].SettleSeconds, factors[k], settled[i].ContinuousCelsius))];
        tooHot.AddRange(all.Where(point => point.ContinuousCelsius > limit));
        return [.. all.Where(point => point.ContinuousCelsius <= limit)];
    }

    private double[] Factors(IReadOnlyList<AxisSettings> settings, IReadOnlyList<LoadCase> cases, bool whole) => CornerFactors.Of(
        ask,
        [.. settings.Select(one => (Func<double, IEnumerable<BatchCase>>)(factor => cases.Select(load => load.With(setup, one, factor, whole ? double.PositiveInfinity : RateFinder.ProbeRadians(one)))))],
        options.LoadFactor);

    private List<ToleranceFactors> Corners(WorstCorner worst) => options.Coarse
        ? [worst.Factors, ToleranceFactors.Nominal]
        : [.. Enumerable.Range(0, ToleranceFactors.Corners).Select(mask => ToleranceFactors.Corner(options.Tolerances, mask)).Distinct()];

    /// <summary>The best point that survives every move at every corner; points that do not lose what they claimed.</summary>
    private FrontPoint? Verified(List<FrontPoint> points, WorstCorner worst, out Verification verified)
    {
        List<ToleranceFactors> corners = Corners(worst);
        verified = default;
        for (int round = 0; round < MostRounds; round++)
        {
            if (ParetoFront.Choose(points, options.Aim, options.LoadFactor) is not { } chosen)
            {
                return null;
            }

            LoadCase[] cases = [.. moves.SelectMany(move => corners.Select(corner => new LoadCase(move, corner)))];
            BatchResult[] results = ask.Ask([.. cases.Select(load => load.With(setup, chosen.Settings, options.LoadFactor))]);

            // The currents fall after the slew: at the deciding cases that is watched, too.
            BatchResult[] rests = ask.Ask([.. loads.Select(load => load.With(setup, chosen.Settings, options.LoadFactor))], BatchDepth.Settling);
            // The scenario's own move, with both axes, must settle as well: that is what its user will see.
            LoadCase[] own = [.. moves.Where(move => move.Kind == CheckMoveKind.Own).Select(move => new LoadCase(move, ToleranceFactors.Nominal))];
            BatchResult[] seen = ask.Ask([.. own.Select(load => load.With(setup, chosen.Settings, 1.0))], BatchDepth.Settling);
            LoadCase[] failing =
            [
                .. cases.Where((_, i) => results[i].End != MoveEnd.Arrives),
                .. loads.Where((_, i) => rests[i].End is not (MoveEnd.Arrives or MoveEnd.DoesNotSettle)),
                .. own.Where((_, i) => seen[i].End != MoveEnd.Arrives),
            ];
            verified = new Verification(results.Length + rests.Length + seen.Length, corners.Count, moves.Count, failing.Length);
            if (failing.Length == 0)
            {
                return chosen;
            }

            LoadCase[] news = [.. failing.GroupBy(load => load.Move).Select(group => group.First()).Where(load => !loads.Contains(load)).Take(HardMoves)];
            loads.AddRange(news);
            Reconsider(points, chosen, failing[0], news);
        }

        return null;
    }

    private void Reconsider(List<FrontPoint> points, FrontPoint failed, LoadCase fails, LoadCase[] news)
    {
        LoadCase[] cases = news.Length > 0 ? news : [fails];
        BatchResult[] results = ask.Ask([.. points.SelectMany(point => cases.Select(load => load.With(setup, point.Settings, options.LoadFactor)))]);
        for (int i = 0; i < points.Count; i++)
        {
            if (points[i] == failed || results.Skip(i * cases.Length).Take(cases.Length).Any(result => result.End != MoveEnd.Arrives))
            {
                double factor = Math.Min(points[i].LoadFactor, Factors([points[i].Settings], cases, whole: true)[0]);
                points[i] = points[i] with { LoadFactor = points[i] == failed ? Math.Min(factor, 0.999 * options.LoadFactor) : factor };
            }
        }

        double slower = Multiple(StepBack * failed.Settings.SlewRateRadiansPerSecond);
        if (slower > 0.0)
        {
            points.AddRange(Points([failed.Settings with { SlewRateRadiansPerSecond = slower }]));
        }
    }

    private (MountChange Change, RateQuestion Question)[] Changes(AxisSettings settings) =>
    [
        .. from change in Enum.GetValues<MountChange>()
           let changed = MountChanges.Apply(change, setup, axis, settings)
           where changed is not null
           select (change, new RateQuestion(changed.Value.Setup, changed.Value.Settings)),
    ];
}
