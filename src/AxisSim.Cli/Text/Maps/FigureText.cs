using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Cli.Text.Maps;

/// <summary>The figure that a map is about, in words.</summary>
internal static class FigureText
{
    /// <summary>The figure of one cell; empty for outcomes and where there is none.</summary>
    public static string Of(MapReport report, CellResult cell)
    {
        double figure = report.Figure(cell);
        return double.IsNaN(figure) ? "" : $"{Name(report.Header.Metric)} {Value(report.Header.Metric, figure)}";
    }

    /// <summary>Least and greatest figure over the cells that arrive, and where.</summary>
    public static void Write(Page page, MapReport report)
    {
        if (report.Header.Metric == MapMetric.Outcome)
        {
            return;
        }

        (int least, int greatest) = (-1, -1);
        for (int place = 0; place < report.Cells.Count; place++)
        {
            CellResult cell = report.Cells[place];
            double figure = report.Figure(cell);
            if (cell.End != MoveEnd.Arrives || double.IsNaN(figure))
            {
                continue;
            }

            least = least < 0 || figure < report.Figure(report.Cells[least]) ? place : least;
            greatest = greatest < 0 || figure > report.Figure(report.Cells[greatest]) ? place : greatest;
        }

        string name = Name(report.Header.Metric);
        page.Rows(least < 0
            ? [(name, "none: no cell arrives")]
            : [("least", $"{name} {At(report, least)}"), ("greatest", $"{name} {At(report, greatest)}")]);
    }

    private static string At(MapReport report, int place)
    {
        MapHeader header = report.Header;
        int column = place / report.Cells.Rows, row = place % report.Cells.Rows;
        return $"{Value(header.Metric, report.Figure(report.Cells[place]))}, at {OwnText.With(header.X, header.X.Values[column])} and {OwnText.With(header.Y, header.Y.Values[row])}";
    }

    private static string Name(MapMetric metric) => metric switch
    {
        MapMetric.Margin => "torque margin",
        MapMetric.Settle => "settling time",
        MapMetric.Duration => "slew and settling",
        _ => "winding temperature",
    };

    private static string Value(MapMetric metric, double figure) => metric switch
    {
        MapMetric.Margin => double.IsNegativeInfinity(figure) ? "none: no pull-out torque" : Units.Percent(figure),
        MapMetric.Temperature => Units.Celsius(figure),
        _ => Units.Time(figure),
    };
}
