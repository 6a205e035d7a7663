using AxisSim.Cli.Text.Envelopes;
using AxisSim.Cli.Text;
using AxisSim.Core.Numerics;
using AxisSim.Core.Questions;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Finds rates below the greatest ones with which the whole move, run as typed, arrives and settles.</summary>
internal static class EnvelopeTrial
{
    /// <summary>Shares of the greatest rate that are tried in turn: first a third in hand (common practice, no source).</summary>
    private static readonly double[] Shares = [0.67, 0.5, 0.35, 0.2];

    /// <summary>The same where the rate has load in hand already.</summary>
    private static readonly double[] SafeShares = [1.0, 0.9, .. Shares];

    private const int TypedDigits = 2;

    /// <summary>A line for all axes together, or one for each where together none holds.</summary>
    public static IReadOnlyList<TypedLine> Of(Scenario scenario, IReadOnlyList<EnvelopeReport> reports, QuestionOptions options)
    {
        EnvelopeReport[] able = [.. reports.Where(report => double.IsFinite(report.Own.RateRadiansPerSecond))];
        TypedLine? First(EnvelopeReport[] of) => TypedTrial.First(scenario, Lines(of), of[0].LoadFactor, options);
        return able.Length > 1 && First(able) is { } together ? [together] : [.. able.Select(report => First([report])).OfType<TypedLine>()];
    }

    private static IEnumerable<TypedLine> Lines(EnvelopeReport[] reports) => (EnvelopeVerdict.HasMargin(reports[0]) ? SafeShares : Shares)
        .Select(share => new TypedLine([.. reports.Select(report => report.Axis)], [.. reports.Select(report => Setting(report, share))]))
        .DistinctBy(line => string.Join(' ', line.Settings));

    // Down: what is typed must not be faster than what was found.
    private static string Setting(EnvelopeReport report, double share) =>
        $"{report.Axis.Key()}.motion.slew_rate={Say.Number(RoundDigits.Down(Math.Min(Units.Degrees(report.AskedRadiansPerSecond), share * Units.Degrees(report.Own.RateRadiansPerSecond)), TypedDigits))} deg/s";
}
