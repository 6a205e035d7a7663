using AxisSim.Cli.Input;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>What to try after reading a map.</summary>
internal static class Advice
{
    // Friction of datasheets is good to about this.
    private const double NearShare = 0.3;

    /// <summary>Writes it.</summary>
    public static void Write(Page page, MapReport report)
    {
        page.Heading("What to try");
        EdgeDistance[] edges = [.. report.Distances.Where(distance => !double.IsNaN(distance.EdgeValue))];
        if (report.Own.End == MoveEnd.Arrives)
        {
            Arriving(page, report, edges);
        }
        else if (edges.Any(edge => edge.BeyondEnd == MoveEnd.Arrives))
        {
            Beyond(page, report);
        }
        else if (report.Cells.CountOf(MoveEnd.Arrives) == 0)
        {
            page.Text("Nothing on this map arrives: widen the ranges, or map other keys. axissim simulate says why your own move fails and what cures it:");
            page.Copyable(CommandText.Of("simulate", report.Header.File, report.Header.SettingsFiles, report.Header.Settings, []), indent: 4);
        }
        else
        {
            page.Text(report.Distances.Count > 0
                ? "Neither key alone brings your point to where it arrives: look in map.csv for the nearest cell that does, and change both."
                : "Choose a cell that arrives and lies well inside, and try it with axissim simulate and --set.");
        }
    }

    private static void Beyond(Page page, MapReport report)
    {
        page.Text(report.Tries switch
        {
            null => "The scenario cannot be read as it was, so no change is told that was not run: the cells beyond the edge are in map.csv.",
            { Count: 0 } => "One cell or more beyond the edge arrives, but run as typed, with both axes and the settling after it, no change of one key alone lets the whole move arrive and settle: look in map.csv, and change both.",
            _ => "Each of these changes alone brings your point over the edge, run as typed; go further, for a place near the edge is no place to stay:",
        });
        foreach (MapTry one in report.Tries ?? [])
        {
            MapKey key = report.Key(one.Along);
            page.Item("-", $"{OwnText.ShortName(report, one.Along)} {OwnText.With(key, one.Value)} instead of {OwnText.With(key, key.Own.Shown)}: {one.Line.Promise}.");
            page.Copyable(CommandText.Of("simulate", report.Header.File, report.Header.SettingsFiles, report.Header.Settings, one.Line.Settings), indent: 4);
        }
    }

    private static void Arriving(Page page, MapReport report, EdgeDistance[] edges)
    {
        if (edges.Length == 0)
        {
            page.Text(report.Distances.Count > 0
                ? "There is no edge along either key within these ranges. Wider ranges show where it lies; keys of the load (imbalance, friction, supply voltage) show what else it hangs on."
                : "Choose ranges that hold your own values, to see how far the edge is from them.");
            return;
        }

        EdgeDistance[] near = [.. edges.Where(edge => Math.Abs(edge.EdgeValue - report.Key(edge.Along).Own.Shown) < NearShare * Math.Abs(report.Key(edge.Along).Own.Shown))];
        page.Text(near.Length > 0
            ? $"Move away from the edge: {Say.List([.. near.Select(edge => $"{(edge.Up ? "less" : "more")} {OwnText.ShortName(report, edge.Along)}")])}. Friction from datasheets is good to about 30 %, and the edge is nearer than that."
            : "Your values lie well inside. Map the keys that you know least (axis.friction, worm.friction, the imbalance) to see whether they can bring the edge near.");
    }
}
