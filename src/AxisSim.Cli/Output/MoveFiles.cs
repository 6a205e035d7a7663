using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Files.Tables;
using AxisSim.Plots;

namespace AxisSim.Cli.Output;

/// <summary>The files of a simulated move.</summary>
internal static class MoveFiles
{
    private const string Outcome = "outcome.json";
    private const double PictureScale = 1.5;

    // Measured at the benchmark case: 251.5 MB for 700,000 steps.
    private const double BytesPerStep = 359.4;
    private const double WorthSayingBytes = 20e6;

    /// <summary>What tables of every step will take of the disk, when that is much; null otherwise.</summary>
    public static string? Warning(IReadOnlyCollection<StepRows> everyStep)
    {
        double bytes = BytesPerStep * everyStep.Sum(rows => (double)rows.Count);
        return bytes < WorthSayingBytes ? null : $"axissim: note: with every step, the {(everyStep.Count == 1 ? "trace takes" : "traces take")} about {Say.Number(bytes / 1e6, 2)} MB; without --full, a few MB.";
    }

    /// <summary>Writes traces and figures, and the outcome last: where it is, the set is whole and of one run.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="report">The move.</param>
    /// <param name="everyStep">Every step of each axis of the report; empty when the traces are enough.</param>
    /// <param name="document">The outcome.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, MoveReport report, IReadOnlyList<StepRows> everyStep, MoveDocument document)
    {
        folder.Remove(Outcome);
        for (int i = 0; i < report.Results.Count; i++)
        {
            AxisResult result = report.Results[i];
            string axis = result.Outcome.Axis.Key();
            StepRows? rows = everyStep.Count > 0 ? everyStep[i] : null;
            folder.Write($"{axis}-trace.csv", stream => Table(stream, result.Trace, rows));
            CloseUp(folder, $"{axis}-close-up.csv", result);
            if (result.Trace.Count > 0)
            {
                Figure(folder, $"{axis}-move", MoveSheet.Create(result.Trace, result.Outcome, $"{report.Name}: {result.Outcome.Axis.Words()}", VerdictText.OfAxis(result)));
            }

            Figure(folder, $"{axis}-torque-speed", TorqueSpeedFigure.Create(result.Curves, $"{report.Name}: torque and speed, {result.Outcome.Axis.Words()}", result.Outcome.Facts.TotalReduction, VerdictText.OfAxis(result)));
        }

        folder.Write(Outcome, document.Write);
    }

    private static void Table(Stream stream, Trace trace, StepRows? rows)
    {
        if (rows is null)
        {
            TraceCsv.Write(stream, trace);
        }
        else
        {
            TraceCsv.Write(stream, rows);
        }
    }

    /// <summary>Writes what the close-up of the figure shows; one of an earlier run must not stay where there is none.</summary>
    private static void CloseUp(OutputFolder folder, string name, AxisResult result)
    {
        CloseUp closeUp = result.Outcome.Loss is null ? result.Trace.Settling : result.Trace.Loss;
        if (closeUp.Count > 0)
        {
            folder.Write(name, stream => TraceCsv.Write(stream, closeUp));
        }
        else
        {
            folder.Remove(name);
        }
    }

    /// <summary>Writes a figure as PNG and SVG.</summary>
    public static void Figure(OutputFolder folder, string name, IFigure figure)
    {
        folder.Write(name + ".png", stream => FigureWriter.WritePng(figure, stream, PictureScale));
        folder.Write(name + ".svg", stream => FigureWriter.WriteSvg(figure, stream));
    }
}
