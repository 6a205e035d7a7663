using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Reductions;
using AxisSim.Files.Tables;
using AxisSim.Plots;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>The files of the lesson on the reduction.</summary>
internal static class ReductionFiles
{
    private const string Outcome = "reduction.json";

    /// <summary>Writes tables and figures, and the document last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, string name, IReadOnlyList<ReductionReport> reports, ReductionDocument document)
    {
        folder.Remove(Outcome);
        foreach (ReductionReport report in reports)
        {
            string axis = report.Axis.Key();
            folder.Write($"{axis}-reduction.csv", stream => ReductionCsv.Write(stream, report.Result));
            MoveFiles.Figure(folder, $"{axis}-reduction", ReductionFigure.Create(Picture(name, report)));
        }

        folder.Write(Outcome, document.Write);
    }

    private static ReductionPicture Picture(string name, ReductionReport report) => new()
    {
        Title = $"{name}: what the total reduction changes, {report.Axis.Words()}",
        Sentence = ReductionVerdict.Of(report),
        Result = report.Result,
        AskedRateRadiansPerSecond = report.SlewRateRadiansPerSecond,
        AskedAccelerationRadiansPerSecondSquared = report.AccelerationRadiansPerSecondSquared,
        ToleranceRadians = report.ToleranceRadians,
    };
}
