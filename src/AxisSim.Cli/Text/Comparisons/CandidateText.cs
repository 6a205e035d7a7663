using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
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

    /// <summary>What limits, in a word or two.</summary>
    public static string Short(CandidateLimit limit) => limit switch
    {
        CandidateLimit.SupplyVoltage => "supply voltage",
        CandidateLimit.Torque => "torque",
        CandidateLimit.Resonance => "resonance",
        CandidateLimit.Clutch => "clutch",
        CandidateLimit.PulseRate => "pulse rate",
        CandidateLimit.MoveLength => "move length",
        CandidateLimit.MotorSpeed => "motor speed",
        _ => "not simulated",
    };

    /// <summary>What became of a candidate, or what limits it, in a few words for a table.</summary>
    public static string Status(CandidateResult result) => result.Fate switch
    {
        CandidateFate.TooHot => "TOO HOT",
        CandidateFate.NotSettled => "DOES NOT SETTLE",
        CandidateFate.NoSafeRate => "NO SAFE RATE",
        CandidateFate.Hopeless => "TOO WEAK",
        _ => result.SlowedToSettle ? "settling" : Short(result.Worst.Limit),
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
            CandidateFate.NoSafeRate when worst.Search is { Tried: > 0, RateRadiansPerSecond: double.NaN } => $"with {load} even {Limit(worst)}{where}",
            CandidateFate.NoSafeRate => $"no rate is safe for both axes together with {load}",
            CandidateFate.Ranked when result.SlowedToSettle => "it was slowed down: at its greatest safe rates it does not settle in the time observed",
            _ => Limit(worst) + where,
        };
    }

    private static string Lacks(CandidateLimit limit) => limit switch
    {
        CandidateLimit.SupplyVoltage => "the supply voltage is too low for its windings",
        CandidateLimit.PulseRate => "the controller cannot pulse that fast",
        CandidateLimit.MoveLength => "the two ramps take the whole move",
        _ => "too little torque",
    };

    private static string Limit(CandidateAxis axis)
    {
        string failing = Rate(axis.Search?.FirstFailingRadiansPerSecond ?? double.NaN);
        return axis.Limit switch
        {
            CandidateLimit.SupplyVoltage => $"{failing} stalls for want of supply voltage: with ample voltage it would arrive",
            CandidateLimit.Torque => $"{failing} stalls for want of torque: more voltage would not help",
            CandidateLimit.Resonance => $"{failing} stalls from resonance: the torque would do, but the rotor swings out of step",
            CandidateLimit.Clutch => $"{failing} makes the clutch slip",
            CandidateLimit.PulseRate => $"the controller cannot pulse faster than {Rate(axis.Search?.TopRadiansPerSecond ?? double.NaN)}",
            CandidateLimit.MoveLength => "the two ramps take the whole move, which gets no faster with this ramp",
            CandidateLimit.MotorSpeed => $"faster than {Rate(axis.Search?.TopRadiansPerSecond ?? double.NaN)} it has less than {Units.Percent(EnvelopeStudy.LeastTorqueShare)} of its holding torque",
            _ => $"{failing} is too fast to simulate",
        };
    }

    private static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);
}
