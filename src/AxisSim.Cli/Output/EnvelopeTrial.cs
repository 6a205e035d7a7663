using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Finds rates well below the greatest safe ones with which the whole move, run as typed, arrives and settles.</summary>
internal static class EnvelopeTrial
{
    /// <summary>Shares of the greatest safe rate that are tried in turn: first a third in hand (common practice, no source).</summary>
    private static readonly double[] Shares = [0.67, 0.5, 0.35, 0.2];

    /// <summary>No more than the load as it is was promised.</summary>
    private const double AsItIs = 1.0;

    /// <summary>A line for all axes together, or one for each where together none holds.</summary>
    public static IReadOnlyList<TypedLine> Of(Scenario scenario, IReadOnlyList<EnvelopeReport> reports, QuestionOptions options)
    {
        EnvelopeReport[] able = [.. reports.Where(report => double.IsFinite(report.Own.RateRadiansPerSecond))];
        TypedLine? First(EnvelopeReport[] of) => TypedTrial.First(scenario, Lines(of), AsItIs, options);
        return able.Length > 1 && First(able) is { } together ? [together] : [.. able.Select(report => First([report])).OfType<TypedLine>()];
    }

    private static IEnumerable<TypedLine> Lines(EnvelopeReport[] reports) => Shares
        .Select(share => new TypedLine([.. reports.Select(report => report.Axis)], [.. reports.Select(report => Setting(report, share))]))
        .DistinctBy(line => string.Join(' ', line.Settings));

    private static string Setting(EnvelopeReport report, double share) =>
        $"{report.Axis.Key()}.motion.slew_rate={Say.Number(TwoDigits(Math.Min(Units.Degrees(report.AskedRadiansPerSecond), share * Units.Degrees(report.Own.RateRadiansPerSecond))))} deg/s";

    // Down: what is typed must not be faster than what was found.
    private static double TwoDigits(double value)
    {
        double grain = Math.Pow(10.0, Math.Floor(Math.Log10(value)) - 1.0);
        return Math.Floor((value / grain) + 1e-9) * grain;
    }
}
