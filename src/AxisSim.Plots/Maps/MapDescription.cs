using System.Globalization;
using AxisSim.Core.Maps;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots.Maps;

/// <summary>What a map shows, in words.</summary>
internal static class MapDescription
{
    /// <summary>The name of a look of cells.</summary>
    public static string Name(Look look) => ReferenceEquals(look, Looks.CellNoValue) ? "arrives, no figure" : Name(Enum.GetValues<MapCell>().First(cell => ReferenceEquals(Looks.Cell(cell), look)));

    /// <summary>The name of a kind of cells.</summary>
    public static string Name(MapCell cell) => cell switch
    {
        MapCell.Arrives => "arrives",
        MapCell.Stalls => "stalls",
        MapCell.ClutchSlips => "clutch slips",
        MapCell.DoesNotSettle => "does not settle",
        MapCell.Broken => "no finite result",
        MapCell.NotWorkable => "too fast to simulate",
        MapCell.NotValid => "no valid scenario",
        _ => "not computed",
    };

    /// <summary>The description.</summary>
    public static string Of(CellGrid grid)
    {
        MapPicture picture = grid.Picture;
        string[] shares = [.. picture.Cells.GroupBy(cell => cell).OrderBy(group => group.Key).Select(group => string.Create(CultureInfo.InvariantCulture, $"{Name(group.Key)} {100.0 * group.Count() / picture.Cells.Count:0.#} %"))];
        string text = (picture.Sentence.Length > 0 ? picture.Sentence + " " : "")
            + $"Map over {picture.X.Title}, from {Ends(grid.X)}, and {picture.Y.Title}, from {Ends(grid.Y)}, of {picture.Cells.Count.ToString(CultureInfo.InvariantCulture)} points: {string.Join("; ", shares)}.";
        if (grid.LeastAndGreatest is { } ends)
        {
            text += $" {picture.Metric!.Title}, where the move arrives: from {Number(ends.Least)} to {Number(ends.Greatest)}; a darker tone is more.";
        }

        if (grid.HasPoint)
        {
            MapPoint point = picture.Point!;
            MapCell cell = picture.Cells[(grid.Y.IndexOf(point.Y) * grid.X.Centres.Count) + grid.X.IndexOf(point.X)];
            text += $" Marked at {Number(point.X)}, {Number(point.Y)}: {point.Label}; the cell there: {Name(cell)}.";
        }

        return text;
    }

    private static string Ends(GridScale scale) => $"{Number(scale.Centres[0])} to {Number(scale.Centres[^1])}{(scale.Logarithmic ? " (logarithmic)" : "")}";

    private static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
