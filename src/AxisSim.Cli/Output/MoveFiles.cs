using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;
using AxisSim.Files.Tables;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;

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
    public static string? Warning(MoveReport report)
    {
        double bytes = BytesPerStep * report.Results.Where(result => result.Trace.Count > 0).Sum(result => result.Trace.ToSeconds[^1] / result.Step.StepSeconds);
        return bytes < WorthSayingBytes ? null : $"axissim: note: with every step, the {(report.Results.Count == 1 ? "trace takes" : "traces take")} about {Say.Number(bytes / 1e6, 2)} MB; without --full, a few MB.";
    }

    /// <summary>Writes traces and figures, and the outcome last: where it is, the set is whole and of one run.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="report">The move.</param>
    /// <param name="everyStep">Whether every step is wanted in the tables, not the stretches of the traces.</param>
    /// <param name="document">The outcome.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, MoveReport report, bool everyStep, MoveDocument document)
    {
        folder.Remove(Outcome);
        foreach (AxisResult result in report.Results)
        {
            string axis = result.Outcome.Axis.Key();
            folder.Write($"{axis}-trace.csv", stream => Table(stream, report, result, everyStep));
            CloseUp(folder, $"{axis}-close-up.csv", result);
            if (result.Trace.Count > 0)
            {
                Figure(folder, $"{axis}-move", MoveSheet.Create(result.Trace, result.Outcome, $"{report.Name}: {result.Outcome.Axis.Words()}", $"{VerdictText.OfAxis(result)}\n{MoveText.Sentence(report)}"));
            }

            Figure(folder, $"{axis}-torque-speed", TorqueSpeedFigure.Create(result.Curves, $"{report.Name}: torque and speed, {result.Outcome.Axis.Words()}", result.Outcome.Facts.TotalReduction, VerdictText.OfAxis(result)));
        }

        folder.Write(Outcome, document.Write);
    }

    // The same run once more, straight into the file: it takes moments, and its steps need not all be in memory.
    private static void Table(Stream stream, MoveReport report, AxisResult result, bool everyStep)
    {
        if (!everyStep)
        {
            TraceCsv.Write(stream, result.Trace);
            return;
        }

        using var table = new StepCsv(stream);
        MoveStudy.Run(report.Setup, result.Outcome.Axis, new MoveOptions { StepSeconds = report.AskedStepSeconds, Explain = false, EveryStep = table });
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
