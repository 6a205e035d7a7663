using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Studies;
using AxisSim.Files.Tables;
using AxisSim.Plots;

namespace AxisSim.Cli.Output;

/// <summary>The files of a simulated move.</summary>
internal static class MoveFiles
{
    private const string Outcome = "outcome.json";
    private const double PictureScale = 1.5;

    // Measured at the benchmark case: 239.6 MB for 700,000 steps.
    private const double BytesPerSample = 342.3;
    private const double WorthSayingBytes = 20e6;

    /// <summary>What traces of every step will take of the disk, when that is much; null otherwise.</summary>
    public static string? Warning(MoveReport report)
    {
        double bytes = BytesPerSample * report.Results.Sum(result => (double)result.Trace.Count);
        return bytes < WorthSayingBytes ? null : $"axissim: note: with every step, the {(report.Results.Count == 1 ? "trace takes" : "traces take")} about {Say.Number(bytes / 1e6, 2)} MB; without --full, a few MB.";
    }

    /// <summary>Writes traces and figures, and the outcome last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, MoveReport report, MoveDocument document)
    {
        folder.Remove(Outcome);
        foreach (AxisResult result in report.Results)
        {
            string axis = result.Outcome.Axis.Key();
            folder.Write($"{axis}-trace.csv", stream => TraceCsv.Write(stream, result.Trace));
            if (result.Trace.Count > 0)
            {
                Figure(folder, $"{axis}-move", MoveSheet.Create(result.Trace, result.Outcome, $"{report.Name}: {result.Outcome.Axis.Words()}", VerdictText.OfAxis(result)));
            }

            Figure(folder, $"{axis}-torque-speed", TorqueSpeedFigure.Create(result.Curves, $"{report.Name}: torque and speed, {result.Outcome.Axis.Words()}", result.Outcome.Facts.TotalReduction, VerdictText.OfAxis(result)));
        }

        folder.Write(Outcome, document.Write);
    }

    /// <summary>Writes a figure as PNG and SVG.</summary>
    public static void Figure(OutputFolder folder, string name, IFigure figure)
    {
        folder.Write(name + ".png", stream => FigureWriter.WritePng(figure, stream, PictureScale));
        folder.Write(name + ".svg", stream => FigureWriter.WriteSvg(figure, stream));
    }
}
