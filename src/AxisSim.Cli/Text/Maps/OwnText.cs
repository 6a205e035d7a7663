using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>The file's own point on a map, and how far it is from the edge, in words.</summary>
internal static class OwnText
{
    /// <summary>The sentence at the top.</summary>
    public static string Verdict(MapReport report)
    {
        string arriving = $"{Say.Number(100.0 * report.Cells.CountOf(MoveEnd.Arrives) / report.Cells.Count, 2)} % of the map arrives.";
        string[] missing = [.. new[] { report.Header.X, report.Header.Y }.Where(key => double.IsNaN(key.Own.Shown)).Select(key => key.Key)];
        if (missing.Length > 0)
        {
            return $"MAP: the file gives no value of {Say.List(missing)}, so it has no point of its own here. {arriving}";
        }

        if (report.Own.End == MoveEnd.Unknown)
        {
            return $"MAP: the file is whole only with values of the two keys, so it has no point of its own here. {arriving}";
        }

        CellResult own = report.Own;
        string when = double.IsNaN(own.FailureSeconds) ? "" : $", past recovery {Units.Time(own.FailureSeconds)} after the start";
        string place = $"your own point, {Point(report.Header.X)} and {Point(report.Header.Y)}";
        string outside = report.Distances.Count > 0 ? "" : " That point lies outside the ranges of the map.";
        string figure = FigureText.Of(report, own);
        return $"{EndText.Loud(own.End)}: at {place}, the move {EndText.Does(own.End)}{when}{(figure.Length == 0 ? "" : "; " + figure)}.{outside}{Nearest(report)} {arriving}";
    }

    /// <summary>How far the edge is in one direction.</summary>
    public static string Distance(MapReport report, EdgeDistance distance)
    {
        MapKey key = report.Key(distance.Along);
        if (double.IsNaN(distance.EdgeValue))
        {
            return $"no edge up to {key.Text(distance.Up ? key.Values[^1] : key.Values[0])}, the end of the range";
        }

        double away = Math.Abs(distance.EdgeValue - key.Own.Shown);
        string percent = key.Own.Shown == 0.0 ? "" : $" ({Say.Number(100.0 * away / Math.Abs(key.Own.Shown), 2)} %)";
        return $"{With(key, away)}{percent} {(distance.Up ? "above" : "below")}: from {With(key, distance.EdgeValue)} on it {EndText.Does(distance.BeyondEnd)}";
    }

    /// <summary>The last part of a key; with what is before it where both keys end alike.</summary>
    public static string ShortName(MapReport report, int along)
    {
        string mine = Last(report.Key(along).Key), other = Last(report.Key(1 - along).Key);
        return mine == other ? report.Key(along).Key : mine;
    }

    /// <summary>A number with the unit of a key, to three digits.</summary>
    public static string With(MapKey key, double shown) => Say.Number(shown) + (key.Unit.Length == 0 ? "" : " " + key.Unit);

    /// <summary>From one cell to the next.</summary>
    public static string Step(MapKey key) => key.Logarithmic
        ? $"{Say.Number(100.0 * (Math.Pow(key.Values[^1] / key.Values[0], 1.0 / (key.Values.Length - 1)) - 1.0), 2)} %"
        : With(key, (key.Values[^1] - key.Values[0]) / (key.Values.Length - 1));

    private static string Last(string path) => path[(path.LastIndexOf('.') + 1)..];

    private static string Point(MapKey key) => $"{key.Key} {Say.Number(key.Own.Shown, 4)}{(key.Unit.Length == 0 ? "" : " " + key.Unit)}{(key.Own.ByDefault ? " (by default)" : "")}";

    private static string Nearest(MapReport report)
    {
        EdgeDistance? nearest = report.Distances
            .Where(distance => !double.IsNaN(distance.EdgeValue) && report.Key(distance.Along).Own.Shown != 0.0)
            .MinBy(distance => Share(report, distance));
        return nearest is null ? "" : $" The nearest edge is {Say.Number(100.0 * Share(report, nearest), 2)} % away, towards {(nearest.Up ? "more" : "less")} {ShortName(report, nearest.Along)}.";
    }

    private static double Share(MapReport report, EdgeDistance distance)
    {
        double own = report.Key(distance.Along).Own.Shown;
        return Math.Abs(distance.EdgeValue - own) / Math.Abs(own);
    }
}
