using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Envelopes;
using AxisSim.Files.Tables;
using AxisSim.Plots;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>The files of an envelope.</summary>
internal static class EnvelopeFiles
{
    private const string Outcome = "envelope.json";

    /// <summary>Writes tables and figures, and the document last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, string name, IReadOnlyList<EnvelopeReport> reports, EnvelopeDocument document)
    {
        folder.Remove(Outcome);
        foreach (EnvelopeReport report in reports)
        {
            string axis = report.Axis.Key();
            folder.Write($"{axis}-envelope.csv", stream => EnvelopeCsv.Write(stream, [.. report.Lines.Select(line => (line.Label, line.Rates))]));
            MoveFiles.Figure(folder, $"{axis}-envelope", EnvelopeFigure.Create(Picture(name, report)));
        }

        folder.Write(Outcome, document.Write);
    }

    private static EnvelopePicture Picture(string name, EnvelopeReport report)
    {
        double from = report.Lines[0].Rates[0].RampSeconds, to = report.Lines[0].Rates[^1].RampSeconds;
        bool onIt = report.Own.RampSeconds >= from && report.Own.RampSeconds <= to;
        return new EnvelopePicture
        {
            Title = $"{name}: {EnvelopeVerdict.Greatest(report)}, {report.Axis.Words()}{(report.Key is null ? "" : $", for {report.Key}")}",
            Sentence = EnvelopeVerdict.Of(report),
            Curves = [.. report.Lines.Select(line => new EnvelopeCurve(line.Label, [.. line.Rates.Select(rate => new EnvelopePoint(rate.RampSeconds, rate.RateRadiansPerSecond))]))],
            Own = onIt ? (new EnvelopePoint(report.Own.RampSeconds, report.AskedRadiansPerSecond), $"the file: {EnvelopeVerdict.Rate(report.AskedRadiansPerSecond)}, {Units.Time(report.Own.RampSeconds)}") : null,
            Bound = report.OnePulseLimit && double.IsFinite(report.PulseLimitRadiansPerSecond) ? (report.PulseLimitRadiansPerSecond, "greatest pulse rate") : null,
            LogarithmicRamps = true,
        };
    }
}
