using AxisSim.Cli.Text.Maps;
using AxisSim.Cli.Text;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Runs values beyond the edges of a map as typed, where the file's own point fails.</summary>
internal static class MapTrial
{
    /// <summary>So many values beyond an edge are tried, one after the other away from it.</summary>
    private const int MostValues = 6;

    /// <summary>The report with what holds. Parts and maps whose own point arrives stay as they are.</summary>
    /// <param name="report">The map.</param>
    /// <param name="read">Reads the scenario that the map is of; null when it cannot be had as it was.</param>
    /// <param name="stop">Ends the runs.</param>
    public static MapReport Of(MapReport report, Func<Scenario?> read, CancellationToken stop)
    {
        EdgeDistance[] edges = [.. report.Distances.Where(edge => report.Own.End != MoveEnd.Arrives && edge.BeyondEnd == MoveEnd.Arrives)];
        return edges.Length == 0 || report.Header.ShardCount > 1 ? report : new MapReport(report.Header, report.Cells, report.Invalid) { Tries = Tries(report, edges, read(), stop) };
    }

    private static MapTry[]? Tries(MapReport report, EdgeDistance[] edges, Scenario? scenario, CancellationToken stop)
    {
        if (scenario is null)
        {
            return null;
        }

        MountAxis[] axes = [.. AxisNames.Of(scenario.Setup).Where(axis => report.Header.Axes.Contains(axis.Key()))];
        var options = new QuestionOptions { StepSeconds = report.Header.StepSeconds, Stop = stop };
        return [.. edges.Select(edge => First(report, edge, axes, scenario, options)).OfType<MapTry>()];
    }

    private static MapTry? First(MapReport report, EdgeDistance edge, MountAxis[] axes, Scenario scenario, QuestionOptions options)
    {
        MapKey key = report.Key(edge.Along);
        double[] beyond = [.. (edge.Up ? key.Values : key.Values.Reverse()).SkipWhile(value => value != edge.BeyondValue).Take(MostValues)];
        TypedLine[] lines = [.. beyond.Select(value => new TypedLine(axes, [$"{key.Key}={key.Text(value)}"]))];
        return TypedTrial.First(scenario, lines, TypedTrial.AsItIs, options) is { } line ? new MapTry(edge.Along, beyond[Array.IndexOf(lines, line)], line) : null;
    }
}
