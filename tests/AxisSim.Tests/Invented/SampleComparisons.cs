using AxisSim.Cli.Input;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Batches;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Unit.Core.Comparisons;

namespace AxisSim.Tests.Invented;

/// <summary>Comparisons made by hand for texts, tables and figures.</summary>
internal static class SampleComparisons
{
    private const double Degree = Math.PI / 180.0;
    private static readonly MountAxis[] s_both = [MountAxis.Polar, MountAxis.Declination];
    private static readonly MountSetup s_mount = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), []).Scenario!.Setup;

    /// <summary>One of every fate and most limits, two axes, two reductions and two supplies.</summary>
    public static ComparisonReport EveryFate() => Report(
        s_both,
        [
            Ranked(0, "17 long, 0.9 deg", 360, 24, Limit.SupplyVoltage, 6.2, 6.0, 10.0, 2.0),
            Ranked(1, "17 long, 0.9 deg", 216, 24, Limit.SupplyVoltage, 5.2, 5.0, 11.0, 2.0),
            Ranked(2, "23 medium, 0.9 deg", 360, 24, Limit.PulseRate, 6.5, 6.5, 10.01, 2.2),
            Ranked(3, "23 medium, 1.8 deg", 216, 12, Limit.Imbalance, 4.0, 4.0, 14.0, 2.6) with { SlowedToSettle = true },
            Ranked(4, "17 short, 0.9 deg", 360, 24, Limit.Swings, 3.0, 3.0, 19.0, 2.6),
            Ranked(5, "17 short, 1.8 deg", 360, 24, Limit.Clutch, 2.9, 2.9, 19.5, 2.6),
            Of(6, "17 long, 0.9 deg", 216, 12, CandidateFate.Slower, Limit.SupplyVoltage, 14.5),
            Of(13, "17 long, 0.9 deg", 360, 12, CandidateFate.Hopeless, Limit.PulseRate, double.NaN),
            Of(7, "23 long, 1.8 deg", 216, 24, CandidateFate.NotSettled, Limit.PulseRate, 10.0, axis => axis with { RateRadiansPerSecond = 6.5 * Degree, ContinuousCelsius = 55.0, MeanWatts = 20.0, OwnSlewSeconds = 10.0 }),
            Of(8, "17 long, high inductance", 360, 24, CandidateFate.TooHot, Limit.SupplyVoltage, 10.0, axis => axis with { RateRadiansPerSecond = 6.5 * Degree, ContinuousCelsius = 141.0, MeanWatts = 20.0, SettleSeconds = 2.0, OwnSlewSeconds = 10.0 }),
            Of(9, "14 medium, 0.9 deg", 360, 12, CandidateFate.NoSafeRate, Limit.Imbalance, double.NaN, axis => axis with { Search = Search(double.NaN, 0.5) }),
            Of(10, "14 medium, 1.8 deg", 360, 12, CandidateFate.NoSafeRate, Limit.Imbalance, double.NaN, axis => axis with { Search = Search(1.0, 1.1) }),
            Of(11, "11 short, 1.8 deg", 360, 12, CandidateFate.Hopeless, Limit.Imbalance, double.NaN),
            Of(12, "11 long, 1.8 deg", 360, 12, CandidateFate.Hopeless, Limit.SupplyVoltage, double.NaN),
        ]) with { Fits = [Fit(12), Fit(3)] };

    /// <summary>One axis, one setting, and nothing that will do.</summary>
    public static ComparisonReport None() => Report(
        [MountAxis.Polar],
        [Of(0, "11 short, 1.8 deg", null, null, CandidateFate.Hopeless, Limit.Imbalance, double.NaN, axes: [MountAxis.Polar])]);

    /// <summary>A lone motor that wins.</summary>
    public static ComparisonReport Lone() => Report(
        [MountAxis.Polar],
        [Ranked(0, "17 long, 0.9 deg", null, null, Limit.MotorSpeed, 6.2, 6.0, 10.0, 2.0, [MountAxis.Polar])]);

    /// <summary>A fit to points made by the law with a little more inductance and bent a little.</summary>
    public static MeasuredFit Fit(int points)
    {
        MotorChoice motor = SampleMotors.Of("17 long, 0.9 deg");
        MeasuredPoint[] made =
        [
            .. Enumerable.Range(1, points).Select(i => new MeasuredPoint(10.0 * i * i, 0.0, 24.0, 1.7, false))
                .Select((point, i) => point with { TorqueNewtonMetres = (0.95 + (0.01 * (i % 3))) * PullOutFit.Torque(PullOutFit.Scaled(motor.Motor, 0.9, 1.2), point, 0.0) }),
        ];
        return PullOutFit.Of(motor.Name, motor.Motor, made);
    }

    /// <summary>So many curves that fall with the rate, the first with a need.</summary>
    public static ComparisonCurve[] Curves(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i => new ComparisonCurve($"motor {i} at a reduction of {216 + i} and 24 V", new CandidateCurve(
            [.. Enumerable.Range(0, 40).Select(k => new AxisPoint(0.25 * k * Degree, (100.0 - (8.0 * i)) / (1.0 + Math.Pow(k / (20.0 + i), 3.0))))],
            [.. Enumerable.Range(1, 5).Select(k => new AxisPoint(2.0 * k * Degree, (95.0 - (8.0 * i)) / (1.0 + Math.Pow(k / 3.0, 3.0))))],
            new AxisPoint((7.0 - (0.5 * i)) * Degree, 60.0 - (8.0 * i)),
            [.. Enumerable.Range(0, 50).Select(k => new AxisPoint(Math.Min(7.0, 0.3 * Math.Min(k, 49 - k)) * Degree, k < 25 ? 20.0 : -5.0))]))),
    ];

    private static ComparisonReport Report(IReadOnlyList<MountAxis> axes, IReadOnlyList<CandidateResult> results) => Tried(new()
    {
        File = "mount.toml", Settings = [], Mount = s_mount, Axes = axes, Margin = 0.3, CurrentShare = 1.0, ResolutionRadiansPerSecond = 0.05 * Degree, Results = results,
        Datasheets = [.. results.Select(result => result.Candidate.Motor).Distinct()],
    });

    // As if the best one, and a longer watch for what does not settle, were found to hold.
    private static ComparisonReport Tried(ComparisonReport report) => report with
    {
        Try = report.Winner is { } winner ? new ComparisonTry(winner, new TypedLine(report.Axes, CandidateSettings.Of(report.Mount, winner)!)) : null,
        Settles = [.. Enumerable.Range(0, report.Best.Count).Where(i => report.Best[i].Fate == CandidateFate.NotSettled).Select(i => ("move.observe=16 s", (IReadOnlyList<int>)[i]))],
    };

    private static CandidateResult Ranked(int index, string motor, double? ratio, double? volts, Limit limit, double polar, double declination, double slew, double settle, MountAxis[]? axes = null) =>
        Of(index, motor, ratio, volts, CandidateFate.Ranked, limit, slew, axis => axis with
        {
            RateRadiansPerSecond = (axis.Axis == MountAxis.Polar ? polar : declination) * Degree,
            OwnSlewSeconds = axis.Axis == MountAxis.Polar ? slew : 0.8 * slew,
            Search = Search(polar, polar + 0.05),
            SettleSeconds = axis.Axis == MountAxis.Polar ? settle : 0.5,
            ContinuousCelsius = 41.3,
            MeanWatts = 4.5,
        }, axes);

    private static GreatestRate Search(double rate, double failing) => new()
    {
        RampSeconds = 0.4, RateRadiansPerSecond = rate * Degree, Cap = null, TopRadiansPerSecond = 6.51 * Degree, TopLimit = Limit.PulseRate,
        FirstFailingRadiansPerSecond = failing * Degree, Failure = BatchEnd.Stalls, LeastTriedRadiansPerSecond = 0.5 * Degree, Tried = 40,
    };

    private static CandidateResult Of(int index, string motor, double? ratio, double? volts, CandidateFate fate, Limit limit, double slew, Func<CandidateAxis, CandidateAxis>? change = null, MountAxis[]? axes = null)
    {
        var candidate = new Candidate(SampleMotors.Of(motor), ratio, volts);
        MountSetup setup = CandidateSetup.Of(s_mount, s_both, candidate, 1.0);
        return new CandidateResult
        {
            Candidate = candidate, Setup = setup, Index = index, Fate = fate, SlewSeconds = slew,
            Axes =
            [
                .. (axes ?? s_both).Select(axis => new CandidateAxis
                {
                    Axis = axis, BoundRadiansPerSecond = 6.5 * Degree, Limit = limit, LimitCelsius = 130.0, Facts = Facts.Of(setup, axis), InertiaRatio = 12.3,
                }).Select(axis => change is null ? axis : change(axis)),
            ],
        };
    }
}
