using AxisSim.Core.Maps;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots.Maps;

/// <summary>A map that was checked, with its scales.</summary>
internal sealed class CellGrid
{
    /// <summary>Checks the lists of a map against each other.</summary>
    public CellGrid(MapPicture picture)
    {
        Picture = picture;
        X = new GridScale(picture.X.Values, picture.X.Logarithmic);
        Y = new GridScale(picture.Y.Values, picture.Y.Logarithmic);
        int cells = X.Centres.Count * Y.Centres.Count;
        if (picture.Cells.Count != cells || (picture.Metric is { } metric && metric.Values.Count != cells))
        {
            throw new ArgumentException(
                $"A map of {X.Centres.Count} by {Y.Centres.Count} points needs {cells} cells and as many values, not {picture.Cells.Count} and {picture.Metric?.Values.Count ?? cells}.",
                nameof(picture));
        }

        double[] drawn = picture.Metric is null ? [] : [.. Enumerable.Range(0, cells).Where(HasValue).Select(i => picture.Metric.Values[i])];
        Range = drawn.Length > 0 ? Span.Of(drawn) : null;
        LeastAndGreatest = drawn.Length > 0 ? (drawn.Min(), drawn.Max()) : null;
    }

    public MapPicture Picture { get; }

    public GridScale X { get; }

    public GridScale Y { get; }

    /// <summary>Range of the tones; null when no cell has a value to show.</summary>
    public Span? Range { get; }

    /// <summary>Least and greatest of the values that are shown.</summary>
    public (double Least, double Greatest)? LeastAndGreatest { get; }

    /// <summary>Whether the marked point lies on the map.</summary>
    public bool HasPoint => Picture.Point is { } point && X.IndexOf(point.X) >= 0 && Y.IndexOf(point.Y) >= 0;

    /// <summary>How a cell is drawn, but for the tone of its value.</summary>
    public Look LookOf(int cell) => Picture.Cells[cell] == MapCell.Arrives && Picture.Metric is not null && !HasValue(cell)
        ? Looks.CellNoValue
        : Looks.Cell(Picture.Cells[cell]);

    /// <summary>Whether a cell shows a value.</summary>
    public bool HasValue(int cell) => Picture.Cells[cell] == MapCell.Arrives && Picture.Metric is { } metric && double.IsFinite(metric.Values[cell]);

    /// <summary>Share of a value in the range of the tones.</summary>
    public double Tone(int cell) => Math.Clamp((Picture.Metric!.Values[cell] - Range!.Value.From) / Range.Value.Length, 0.0, 1.0);

    /// <summary>Columns of cells at evenly spaced places across the map; with Y, rows from the bottom.</summary>
    public static int[] Indices(GridScale scale, int places) =>
        [.. Enumerable.Range(0, places).Select(i => Math.Max(0, scale.IndexOf(Math.Clamp(scale.At((i + 0.5) / places), scale.Edges[0], scale.Edges[^1]))))];
}
