using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace AxisSim.Plots.Drawing;

/// <summary>Series and marks in the looks of <see cref="Looks"/>.</summary>
internal static class Marks
{
    public const double MarkerStroke = 1.8;

    /// <summary>A line; a lone point becomes a dot, for a line through one point is nothing.</summary>
    public static LineSeries Line(Look look, List<DataPoint> points)
    {
        bool lone = points.Count(p => p.IsDefined()) == 1;
        LineSeries series = new()
        {
            Color = look.Colour,
            StrokeThickness = look.Width,
            Dashes = DashArray(look),
            LineJoin = LineJoin.Bevel,
            EdgeRenderingMode = EdgeRenderingMode.PreferGeometricAccuracy,
            // OxyPlot's own thinning is off: the points are thinned already, and its clipping is exact.
            MinimumSegmentLength = 0,
        };
        if (lone || look.Marker != MarkerType.None)
        {
            series.MarkerType = lone ? MarkerType.Circle : look.Marker;
            series.MarkerSize = look.MarkerSize;
            series.MarkerFill = look.Hollow ? Palette.Paper : look.Colour;
            series.MarkerStroke = look.Colour;
            series.MarkerStrokeThickness = MarkerStroke;
        }

        series.Points.AddRange(points);
        return series;
    }

    /// <summary>Markers without a line.</summary>
    public static ScatterSeries Markers(Look look, IEnumerable<DataPoint> points)
    {
        ScatterSeries series = new()
        {
            MarkerType = look.Marker,
            MarkerSize = look.MarkerSize,
            MarkerFill = look.Hollow ? Palette.Paper : look.Colour,
            MarkerStroke = look.Colour,
            MarkerStrokeThickness = MarkerStroke,
            EdgeRenderingMode = EdgeRenderingMode.PreferGeometricAccuracy,
        };
        series.Points.AddRange(points.Where(p => p.IsDefined()).Select(p => new ScatterPoint(p.X, p.Y)));
        return series;
    }

    /// <summary>A filled band between two edges.</summary>
    public static AreaSeries Band(Look look, (List<DataPoint> Upper, List<DataPoint> Lower) edges)
    {
        AreaSeries series = new()
        {
            Color = look.Colour,
            Color2 = look.Colour,
            Fill = look.Colour,
            StrokeThickness = 0.8,
            MinimumSegmentLength = 0,
            EdgeRenderingMode = EdgeRenderingMode.PreferGeometricAccuracy,
        };
        series.Points.AddRange(edges.Upper);
        series.Points2.AddRange(edges.Lower);
        return series;
    }

    /// <summary>A filled band between two ordinates from an abscissa on, under the grid's lines and the data.</summary>
    public static RectangleAnnotation Belt(Look look, double from, double to, double start = double.NegativeInfinity) => new()
    {
        MinimumX = start,
        MinimumY = from,
        MaximumY = to,
        Fill = look.Colour,
        Layer = AnnotationLayer.BelowAxes,
    };

    /// <summary>A vertical line across the whole plot.</summary>
    public static UprightLine Upright(Look look, double x) => new() { X = x, Look = look, Layer = AnnotationLayer.AboveSeries };

    /// <summary>A horizontal line at zero, quieter than data and clearer than the grid.</summary>
    public static LineAnnotation Zero() => new()
    {
        Type = LineAnnotationType.Horizontal,
        Y = 0,
        Color = Palette.Frame,
        StrokeThickness = 1,
        LineStyle = LineStyle.Solid,
        Layer = AnnotationLayer.BelowSeries,
    };

    /// <summary>A text on paper, so that it stays legible where it meets a line.</summary>
    public static TextAnnotation Note(string text, double x, double y, HorizontalAlignment horizontal, VerticalAlignment vertical) => new()
    {
        Text = text,
        TextPosition = new DataPoint(x, y),
        TextHorizontalAlignment = horizontal,
        TextVerticalAlignment = vertical,
        FontSize = TextStyle.LegendSize,
        TextColor = Palette.Ink,
        Background = OxyColor.FromAColor(225, Palette.Paper),
        Stroke = OxyColors.Undefined,
        StrokeThickness = 0,
        Padding = new OxyThickness(4, 1, 4, 1),
        Layer = AnnotationLayer.AboveSeries,
    };

    /// <summary>Dashes and gaps of a look in widths of its line; null for a solid line. Wider gaps than OxyPlot's, to be seen in grey.</summary>
    public static double[]? DashArray(Look look) => look.Dash switch
    {
        Dash.Dashed => [4.0, 2.4],
        Dash.Dotted => [1.2, 1.8],
        Dash.DashDot => [7.0, 2.2, 1.6, 2.2],
        _ => null,
    };

    /// <summary>The same for a legend's upright sample, which is short: one dash, dot and dash fill it.</summary>
    public static double[]? ShortDashArray(Look look) => look.Dash == Dash.DashDot ? [3.6, 1.5, 1.2, 1.5] : DashArray(look);
}
