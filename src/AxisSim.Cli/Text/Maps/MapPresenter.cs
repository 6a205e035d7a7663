using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>The page of a map: the file's own point and its distance from the edge, counts, what to try, how to read it, cautions.</summary>
internal static class MapPresenter
{
    /// <summary>Writes the page.</summary>
    public static void Write(Page page, MapReport report, IReadOnlyList<string> files)
    {
        page.Verdict(OwnText.Verdict(report), report.Own.End is MoveEnd.Arrives or MoveEnd.Unknown);
        if (report.Distances.Count > 0)
        {
            page.Heading("From your point to the edge of what arrives");
            page.Rows(report.Distances.Select(distance => (Name(report, distance), OwnText.Distance(report, distance))));
        }

        page.Heading($"The map, {Say.Count(report.Cells.Columns)} x {Say.Count(report.Cells.Rows)} cells");
        page.Rows(Counts(report));
        FigureText.Write(page, report);
        if (report.Invalid.Text is { } message)
        {
            page.Text($"Cells that are not valid were not run. The first of them says: {message}", indent: 2);
        }

        Advice.Write(page, report);
        page.Heading("How to read it");
        foreach (string line in Limits(report))
        {
            page.Item("-", line);
        }

        if (files.Count > 0)
        {
            page.Heading("Files written");
            foreach (string file in files)
            {
                page.Copyable(file, indent: 2);
            }
        }

        Cautions.Write(page);
    }

    private static string Name(MapReport report, EdgeDistance distance) => $"{OwnText.ShortName(report, distance.Along)} {(distance.Up ? "up" : "down")}";

    private static IEnumerable<(string, string)> Counts(MapReport report)
    {
        MapCells cells = report.Cells;
        yield return ("across", report.Header.X.Range);
        yield return ("up", report.Header.Y.Range);
        yield return ("judged by", string.Join(" and ", report.Header.Axes.Select(axis => axis + " axis")));
        foreach (MoveEnd end in Enum.GetValues<MoveEnd>().Where(end => end != MoveEnd.Unknown && cells.CountOf(end) > 0))
        {
            int count = cells.CountOf(end);
            yield return (EndText.Row(end), $"{Say.Many(count, "cell")}, {Share(count, cells.Count)}");
        }
    }

    // A few cells of many must not read as none, nor all but a few as all.
    private static string Share(int count, int all) => count == all ? "all" : $"{Say.Number(Math.Clamp(100.0 * count / all, 0.1, 99.9), 2)} %";

    private static IEnumerable<string> Limits(MapReport report)
    {
        MapCells cells = report.Cells;
        yield return $"Each cell is one simulated move with the values in its middle; an edge lies somewhere between two cells, and distances are along the row and the column nearest to your point. One cell is {OwnText.Step(report.Header.X)} wide and {OwnText.Step(report.Header.Y)} high.";
        if (!report.Header.Full && new AdaptiveGrid(cells).CoarseStride is > 1 and var stride)
        {
            yield return $"{Say.Count(cells.ComputedCount())} of {Say.Count(cells.Count)} cells were run: every {Ordinal(stride)} column and row, and all along the edges. The rest lies among equals and is filled in (computed = 0 in map.csv). An island smaller than {Say.Count(stride)} cells can be missed: --full runs every cell.";
        }

        yield return "Near the edge a small error of friction, balance or supply decides: keep a distance, and look at the load factor that axissim simulate gives.";
    }

    private static string Ordinal(int stride) => stride switch { 2 => "second", _ => Say.Count(stride) + "th" };
}
