using AxisSim.Cli.Text.Maps;
using AxisSim.Core.Maps;
using AxisSim.Plots.Pictures;

namespace AxisSim.Cli.Output;

/// <summary>A map as its figure wants it.</summary>
internal static class MapPictures
{
    /// <summary>The picture.</summary>
    public static MapPicture Of(MapReport report) => new()
    {
        Title = $"{report.Header.Scenario}: {Say.List([.. report.Header.Axes.Select(axis => axis + " axis")])}",
        Sentence = OwnText.Verdict(report),
        X = Key(report.Header.X),
        Y = Key(report.Header.Y),
        Cells = ByRows(report, place => Cell(report.Cells.End(place))),
        Metric = report.Header.Metric == MapMetric.Outcome ? null : new MapTones(Title(report.Header.Metric), ByRows(report, place => Figure(report, place))),
        Point = report.Distances.Count > 0 ? new MapPoint(report.Header.X.Own.Shown, report.Header.Y.Own.Shown, "the file") : null,
    };

    private static MapAxis Key(Files.Maps.MapKey key) => new(key.Unit.Length == 0 ? key.Key : $"{key.Key}, {key.Unit}", key.Values, key.Logarithmic);

    // Cells lie column after column; a picture has them row after row.
    private static T[] ByRows<T>(MapReport report, Func<int, T> of)
    {
        MapCells cells = report.Cells;
        var values = new T[cells.Count];
        for (int row = 0; row < cells.Rows; row++)
        {
            for (int column = 0; column < cells.Columns; column++)
            {
                values[(row * cells.Columns) + column] = of(cells.Place(column, row));
            }
        }

        return values;
    }

    private static double Figure(MapReport report, int place)
    {
        CellResult cell = report.Cells[place];
        double figure = cell.End == MapEnd.Arrives ? report.Figure(cell) : double.NaN;
        return !double.IsFinite(figure) ? double.NaN : report.Header.Metric == MapMetric.Margin ? 100.0 * figure : figure;
    }

    private static string Title(MapMetric metric) => metric switch
    {
        MapMetric.Margin => "Torque margin, %",
        MapMetric.Settle => "Settling time, s",
        MapMetric.Duration => "Slew and settling, s",
        _ => "Winding, hottest duty without end, degC",
    };

    private static MapCell Cell(MapEnd end) => end switch
    {
        MapEnd.Arrives => MapCell.Arrives,
        MapEnd.DoesNotSettle => MapCell.DoesNotSettle,
        MapEnd.ClutchSlips => MapCell.ClutchSlips,
        MapEnd.Stalls => MapCell.Stalls,
        MapEnd.NotWorkable => MapCell.NotWorkable,
        MapEnd.Broken => MapCell.Broken,
        MapEnd.NotValid => MapCell.NotValid,
        _ => MapCell.NotComputed,
    };
}
