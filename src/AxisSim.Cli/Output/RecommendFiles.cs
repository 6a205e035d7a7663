using System.Runtime.CompilerServices;
using System.Text;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Recommendations;
using AxisSim.Files.Tables;
using AxisSim.Plots;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>The files of a recommendation.</summary>
internal static class RecommendFiles
{
    private const string Outcome = "recommend.json";
    private const string Settings = "recommended-settings.txt";

    /// <summary>Writes tables, figures and settings, and the document last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, RecommendReport report, RecommendDocument document)
    {
        folder.Remove(Outcome);
        folder.Remove(Settings);
        foreach (RecommendedAxis advice in report.Axes.Where(advice => advice.Answer.Front.Count > 0))
        {
            string axis = advice.Answer.Axis.Key();
            folder.Write($"{axis}-recommend.csv", stream => FrontCsv.Write(stream, advice.Answer.Front, advice.Answer.Chosen));
            MoveFiles.Figure(folder, $"{axis}-front", FrontFigure.Create(Picture(report, advice)));
        }

        if (report.Recommended.Count > 0)
        {
            string text = string.Concat(report.Recommended.Select(setting => CommandText.Set(setting) + "\n"));
            folder.Write(Settings, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
        }

        folder.Write(Outcome, document.Write);
    }

    private static FrontPicture Picture(RecommendReport report, RecommendedAxis advice) => new()
    {
        Title = $"{report.Name}: trade-off of the {advice.Answer.Axis.Words()}",
        Sentence = RecommendVerdict.Of(report, advice),
        Points = [.. advice.Answer.Front.Select(Mark)],
        Chosen = advice.Answer.Chosen is { } chosen ? Mark(chosen) : null,
        AskedLoadFactor = 1.0 + report.Margin,
    };

    private static FrontMark Mark(FrontPoint point) =>
        new(point.SlewSeconds, point.SettleSeconds, point.LoadFactor, point.ContinuousCelsius, double.IsFinite(point.Settings.ChangeoverRadiansPerSecond));
}
