using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Sky;
using AxisSim.Files.Tables;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>The files of a comparison.</summary>
internal static class ComparisonFiles
{
    private const string Outcome = "comparison.json";

    /// <summary>Curves in the figure: the best handful of motors.</summary>
    private const int MostCurves = 5;

    /// <summary>Rates at which the pull-out torque is simulated for the figure.</summary>
    private const int SimulatedPoints = 6;

    /// <summary>The plane reaches beyond the greatest safe rate by this factor.</summary>
    private const double Beyond = 1.3;

    /// <summary>Writes table and figures, and the document last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, string name, ComparisonReport report, ComparisonDocument document)
    {
        folder.Remove(Outcome);
        folder.Write("comparison.csv", stream => ComparisonCsv.Write(stream, report.Axes, report.Results));
        foreach (MountAxis axis in report.Axes)
        {
            if (Figure(name, report, axis) is { } figure)
            {
                MoveFiles.Figure(folder, $"{axis.Key()}-comparison", figure);
            }
        }

        foreach (MeasuredFit fit in report.Fits)
        {
            MotorChoice datasheet = report.Datasheets.First(motor => motor.Name == fit.Motor);
            MoveFiles.Figure(folder, $"measured-{Plain(fit.Motor)}", MeasuredFigure.Create(fit, datasheet.Motor, $"{fit.Motor}: measured pull-out torque", FitText.Sentence(fit)));
        }

        folder.Write(Outcome, document.Write);
    }

    // A name such as "17 long, 0.9 deg" becomes part of a file's name.
    private static string Plain(string name) =>
        string.Join('-', string.Concat(name.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter == '.' ? letter : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static IFigure? Figure(string name, ComparisonReport report, MountAxis axis)
    {
        CandidateResult[] best = [.. report.Best.Where(result => result.Axes.Any(one => one.Axis == axis && double.IsFinite(one.RateRadiansPerSecond))).Take(MostCurves)];
        if (best.Length == 0)
        {
            return null;
        }

        double top = Beyond * best.Max(result => result.Axes.First(one => one.Axis == axis).RateRadiansPerSecond);
        ComparisonCurve[] curves = [.. best.Select(result => new ComparisonCurve(CandidateText.Name(result), CandidateCurve.Of(result, axis, top, 1.0 + report.Margin, SimulatedPoints)))];
        string load = Say.Number(1.0 + report.Margin);
        return ComparisonFigure.Create($"{name}: motors compared, {axis.Words()}", ComparisonVerdict.Of(report), curves, $"what {load} times the load needs of the first");
    }
}
