using AxisSim.Core.Maps;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace AxisSim.Plots.Maps;

/// <summary>The one panel of a map.</summary>
internal static class MapPanel
{
    private const double Height = 600;

    /// <summary>Room right of the map for the scale of tones with its labels and title.</summary>
    private const double ScaleRoom = 150;

    private const double HaloWidth = 2.4;

    /// <summary>Closed pieces of the edge smaller than this are a dot that hides its cell: the cell's own look shows them.</summary>
    private const double SmallestLoopPixels = 5.0;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(CellGrid grid)
    {
        bool scaled = grid.Range is not null;
        double right = scaled ? ScaleRoom : Panel.RightMargin;
        double width = Sheet.SheetWidth - Panel.LeftMargin - right;
        PlotFrame frame = new(Ends(grid.X), Ends(grid.Y), width, Height);
        PlotModel model = Panel.NewModel(frame, grid.Picture.Y.Title, grid.Picture.X.Title, grid.X.Logarithmic, grid.Y.Logarithmic);
        model.PlotMargins = new OxyThickness(Panel.LeftMargin, model.PlotMargins.Top, right, model.PlotMargins.Bottom);
        foreach (Axis axis in model.Axes)
        {
            axis.MajorGridlineStyle = LineStyle.None;
        }

        List<LegendEntry> legend = [];
        model.Annotations.Add(new CellLayer(grid) { Layer = AnnotationLayer.BelowSeries });
        if (scaled)
        {
            model.Annotations.Add(new ToneScale { Range = grid.Range!.Value, Title = grid.Picture.Metric!.Title });
            legend.Add(new("arrives: tone by the scale", Looks.CellToned));
        }

        legend.AddRange(Enumerable.Range(0, grid.Picture.Cells.Count)
            .Where(cell => !grid.HasValue(cell))
            .Select(grid.LookOf)
            .Distinct()
            .OrderBy(look => Array.IndexOf(s_order, look))
            .Select(look => new LegendEntry(MapDescription.Name(look), look)));
        List<DataPoint> edge = Edge(grid, frame);
        if (edge.Count > 0)
        {
            model.Series.Add(Marks.Line(Looks.MapEdge with { Colour = Palette.Paper, Width = Looks.MapEdge.Width + (2 * HaloWidth) }, edge));
            model.Series.Add(Marks.Line(Looks.MapEdge, edge));
            legend.Add(new("edge of arriving", Looks.MapEdge));
        }

        if (grid.HasPoint)
        {
            MapPoint point = grid.Picture.Point!;
            ScatterSeries mark = Marks.Markers(Looks.MapPoint, [new DataPoint(point.X, point.Y)]);
            model.Series.Add(mark);
            model.Annotations.Add(new PointLabel { At = new DataPoint(point.X, point.Y), Edge = edge, Text = point.Label, Layer = AnnotationLayer.AboveSeries });
            legend.Add(new("marked point", Looks.MapPoint));
        }

        return new Panel(scaled ? grid.Picture.Metric!.Title.Split(',')[0] : "How the move ends", legend, model, Height);
    }

    private static readonly Look[] s_order = [Looks.CellNoValue, .. Enum.GetValues<MapCell>().Select(Looks.Cell)];

    private static List<DataPoint> Edge(CellGrid grid, PlotFrame frame)
    {
        List<DataPoint> points = [];
        foreach (BoundaryLine line in BoundaryTracer.Trace(grid.X, grid.Y, [.. grid.Picture.Cells.Select(cell => cell == MapCell.Arrives)]))
        {
            if (line.Closed && Size(line, grid, frame) < SmallestLoopPixels)
            {
                continue;
            }

            points.AddRange(line.Points.Select(p => new DataPoint(p.X, p.Y)));
            if (line.Closed)
            {
                points.Add(points[^line.Points.Count]);
            }

            points.Add(DataPoint.Undefined);
        }

        return points;
    }

    private static double Size(BoundaryLine line, CellGrid grid, PlotFrame frame)
    {
        double[] x = [.. line.Points.Select(p => grid.X.ShareOf(p.X) * frame.WidthPixels)];
        double[] y = [.. line.Points.Select(p => grid.Y.ShareOf(p.Y) * frame.HeightPixels)];
        return Math.Max(x.Max() - x.Min(), y.Max() - y.Min());
    }

    private static Span Ends(GridScale scale) => new(scale.Edges[0], scale.Edges[^1]);
}
