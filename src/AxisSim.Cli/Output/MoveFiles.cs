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
    private const double PictureScale = 1.5;

    /// <summary>Writes outcome, traces and figures.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, MoveReport report, MoveDocument document)
    {
        folder.Write("outcome.json", document.Write);
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
    }

    /// <summary>Writes a figure as PNG and SVG.</summary>
    public static void Figure(OutputFolder folder, string name, IFigure figure)
    {
        folder.Write(name + ".png", stream => FigureWriter.WritePng(figure, stream, PictureScale));
        folder.Write(name + ".svg", stream => FigureWriter.WriteSvg(figure, stream));
    }
}
