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
        CandidateLimit.MoveLength => "length of the move",
        CandidateLimit.MotorSpeed => "motor speed",
        _ => "too fast to simulate",
    };

    /// <summary>What became of a candidate, or what limits it, in a few words for a table.</summary>
    public static string Status(CandidateResult result) => result.Fate switch
    {
        CandidateFate.TooHot => "TOO HOT",
        CandidateFate.NotSettled => "DOES NOT SETTLE",
        CandidateFate.NoSafeRate => "NO SAFE RATE",
        CandidateFate.Hopeless => "TOO WEAK",
        _ => Short(result.Worst.Limit),
    };

    /// <summary>Why a candidate is not better than it is, in a sentence without a capital.</summary>
    public static string Why(CandidateResult result, double margin)
    {
        CandidateAxis worst = result.Worst;
        CandidateAxis hottest = result.Axes.MaxBy(axis => axis.ContinuousCelsius)!;
        string where = result.Axes.Count > 1 ? $" about the {worst.Axis.Words()}" : "";
        string load = $"{Say.Number(1.0 + margin)} times the load";
        return result.Fate switch
        {
            CandidateFate.TooHot => $"slewing without end heats the winding to {Units.Celsius(hottest.ContinuousCelsius)}, above the {Units.Celsius(hottest.LimitCelsius)} of its insulation class",
            CandidateFate.NotSettled => $"it arrives, but does not settle in the time observed ({Say.List([.. result.Axes.Where(axis => double.IsNaN(axis.SettleSeconds)).Select(axis => axis.Axis.Words())])})",
            CandidateFate.Hopeless => $"not simulated, for by the closed form{where} it does not move {load} at a tenth of the rate in the file: {Lacks(worst.Limit)}",
            CandidateFate.NoSafeRate when worst.Search is { Tried: > 0, RateRadiansPerSecond: double.NaN } => $"with {load}{where} {Say.Sentence(Limit(worst))}",
            CandidateFate.NoSafeRate => $"no rate is safe for both axes together with {load}",
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
            CandidateLimit.SupplyVoltage => $"supply voltage: {failing} stalls, where ample voltage would arrive",
            CandidateLimit.Torque => $"torque: {failing} stalls, and more voltage would not help",
            CandidateLimit.Resonance => $"resonance: the torque would do, but {failing} swings the rotor out of step",
            CandidateLimit.Clutch => $"clutch: {failing} makes it slip",
            CandidateLimit.PulseRate => $"pulse rate: the controller cannot pulse faster than {Rate(axis.Search?.TopRadiansPerSecond ?? double.NaN)}",
            CandidateLimit.MoveLength => "length of the move: the two ramps take all of it",
            CandidateLimit.MotorSpeed => $"motor speed: faster, it has less than {Units.Percent(EnvelopeStudy.LeastTorqueShare)} of its holding torque",
            _ => $"{failing} is too fast to simulate",
        };
    }

    private static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);
}
