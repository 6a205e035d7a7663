using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>Candidates and what limits them, in words.</summary>
internal static class CandidateText
{
    /// <summary>A candidate with what is varied: "17 long at a reduction of 216 and 24 V".</summary>
    public static string Name(CandidateResult result)
    {
        string[] varied =
        [
            .. result.Candidate.TotalReduction is { } ratio ? [$"a reduction of {Say.Number(ratio, 4)}"] : Array.Empty<string>(),
            .. result.Candidate.SupplyVolts is { } volts ? [$"{Say.Number(volts)} V"] : Array.Empty<string>(),
        ];
        return result.Candidate.Motor.Name + (varied.Length == 0 ? "" : " at " + Say.List(varied));
    }

    /// <summary>Total reduction; both where the axes differ.</summary>
    public static string Reduction(CandidateResult result) => string.Join("/", result.Axes.Select(axis => Say.Number(axis.Facts.TotalReduction, 4)).Distinct());

    /// <summary>Open-circuit supply voltage; both where the axes differ.</summary>
    public static string Volts(CandidateResult result) =>
        string.Join("/", result.Axes.Select(axis => Say.Number(result.Candidate.SupplyVolts ?? (result.Setup.Axis(axis.Axis).Drive.SupplyVolts + result.Candidate.Motor.VoltageLossVolts))).Distinct());

    /// <summary>What became of a candidate, or what limits it, in a few words for a table.</summary>
    public static string Status(CandidateResult result) => result.Fate switch
    {
        CandidateFate.TooHot => "TOO HOT",
        CandidateFate.NotSettled => "DOES NOT SETTLE",
        CandidateFate.NoSafeRate => "NO SAFE RATE",
        CandidateFate.Hopeless => "TOO WEAK",
        _ => result.SlowedToSettle ? "settling" : LimitWords.Short(result.Worst.Limit),
    };

    /// <summary>Why a candidate is not better than it is, in a clause without a capital.</summary>
    public static string Why(CandidateResult result, double margin)
    {
        CandidateAxis worst = result.Worst;
        CandidateAxis hottest = result.Axes.MaxBy(axis => axis.ContinuousCelsius)!;
        string where = result.Axes.Count > 1 ? $" ({worst.Axis.Words()})" : "", load = $"{Say.Number(1.0 + margin)} times the load";
        return result.Fate switch
        {
            CandidateFate.TooHot => $"{DutyText.Doing(hottest.Duty)} without end heats the winding to {Units.Celsius(hottest.ContinuousCelsius)}, above the {Units.Celsius(hottest.LimitCelsius)} of its insulation class",
            CandidateFate.NotSettled => $"it arrives, but does not settle in the time observed, nor at half the rate ({Say.List([.. result.Axes.Where(axis => double.IsNaN(axis.SettleSeconds)).Select(axis => axis.Axis.Words())])})",
            CandidateFate.Hopeless => $"not simulated, for by the closed form it cannot move {load} at a tenth of the rate in the file: {Lacks(worst.Limit)}{where}",
            CandidateFate.Slower => $"not simulated, for by the closed form it is on target after {Units.Time(result.SlewSeconds)} at the earliest, while another setting of this motor is sooner",
            CandidateFate.NoSafeRate when worst.Search is { Tried: > 0, RateRadiansPerSecond: double.NaN } => $"with {load} even {LimitOf(worst)}{where}",
            CandidateFate.NoSafeRate => $"no rate is safe for both axes together with {load}",
            CandidateFate.Ranked when result.SlowedToSettle => "it was slowed down: at its greatest safe rates it does not settle in the time observed",
            _ => LimitOf(worst) + where,
        };
    }

    private static string Lacks(Limit limit) => limit switch
    {
        Limit.SupplyVoltage => "the supply voltage is too low for its windings",
        Limit.PulseRate or Limit.MoveLength => LimitWords.Why(limit),
        _ => "too little torque",
    };

    private static string LimitOf(CandidateAxis axis) => axis.Limit switch
    {
        Limit.PulseRate => $"the controller cannot pulse faster than {Rate(axis.Search?.TopRadiansPerSecond ?? double.NaN)}",
        Limit.MoveLength or Limit.MotorSpeed => LimitWords.Why(axis.Limit),
        Limit.Clutch => $"{Failing(axis)} makes the clutch slip",
        Limit.NotSimulated => $"{Failing(axis)} is too fast to simulate",
        _ => $"{Failing(axis)} stalls: {LimitWords.Why(axis.Limit)}",
    };

    private static string Failing(CandidateAxis axis) => Rate(axis.Search?.FirstFailingRadiansPerSecond ?? double.NaN);

    private static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);
}
