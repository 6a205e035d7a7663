using AxisSim.Cli.Input;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Cli.Text;
using AxisSim.Core.Batches;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs what a comparison would tell to try, as typed.</summary>
internal static class ComparisonTrial
{
    /// <summary>So many of the best are tried, should those before them not hold.</summary>
    private const int Most = 5;

    /// <summary>The report with what holds.</summary>
    public static ComparisonReport Of(Scenario scenario, ComparisonReport report, QuestionOptions options) => report with
    {
        Try = Best(scenario, report, options),
        Settles = report.Results.Any(result => result.Fate == CandidateFate.NotSettled) ? Settles(scenario, report, options) : [],
    };

    private static ComparisonTry? Best(Scenario scenario, ComparisonReport report, QuestionOptions options)
    {
        foreach (CandidateResult result in report.Results.Where(result => result.Fate == CandidateFate.Ranked).Take(Most))
        {
            string[] found = [.. CandidateSettings.Of(report.Mount, result, "").Select(one => one.Setting)];
            string[] settings = report.Axes.Contains(MountAxis.Declination) ? found : [.. found, .. scenario.KeptDeclination(found)];
            if (TypedTrial.First(scenario, [new TypedLine(report.Axes, settings)], 1.0 + report.Margin, options, asFile: true) is { } line)
            {
                return new ComparisonTry(result, line);
            }
        }

        return null;
    }

    // A longer watch, or a wider band, for those that do not settle.
    private static List<(string, IReadOnlyList<int>)> Settles(Scenario scenario, ComparisonReport report, QuestionOptions options)
    {
        MoveSettings move = report.Mount.Move;
        string[] settings = [$"move.observe={Say.Number(2.0 * move.ObserveSeconds)} s", $"settling.tolerance={Say.Number(2.0 * Units.Arcseconds(move.SettleToleranceRadians))} arcsec"];
        int[] places = [.. Enumerable.Range(0, report.Best.Count).Where(i => report.Best[i].Fate == CandidateFate.NotSettled)];
        var found = new List<(string, IReadOnlyList<int>)>();
        foreach (string setting in settings)
        {
            if (scenario.With([setting]).Scenario?.Setup.Move is not { } typed)
            {
                continue;
            }

            BatchCase[] cases = [.. places.SelectMany(place => report.Axes.Select(axis => new BatchCase(report.Best[place].Setup with { Move = typed }, axis)))];
            BatchResult[] ends = BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling, StepSeconds = options.StepSeconds, Threads = options.Threads, Stop = options.Stop });
            int[] settling = [.. places.Where((_, i) => ends.Skip(i * report.Axes.Count).Take(report.Axes.Count).All(end => end.End == MoveEnd.Arrives))];
            if (settling.Length > 0)
            {
                found.Add((setting, settling));
            }
        }

        return found;
    }
}
