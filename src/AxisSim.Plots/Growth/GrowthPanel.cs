using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Growth;

/// <summary>One panel of growth.</summary>
internal static class GrowthPanel
{
    private const double Height = 300;

    /// <summary>Room beyond the first and last point, as a share of the range in decades.</summary>
    private const double Room = 0.08;

    /// <summary>Least range of an axis in decades: less would show noise as growth.</summary>
    private const double LeastDecades = 1.0;

    /// <summary>Whether a point can be on logarithmic axes.</summary>
    public static bool CanBeDrawn(GrowthPoint point) => point.Size > 0.0 && point.Cost > 0.0 && double.IsFinite(point.Size) && double.IsFinite(point.Cost);

    /// <summary>Makes the panel.</summary>
    public static Panel Create(GrowthCurve curve)
    {
        GrowthPoint[] points = [.. curve.Points.Where(CanBeDrawn).OrderBy(point => point.Size)];
        PlotFrame frame = new(Range([.. points.Select(point => point.Size)]), Range([.. points.Select(point => point.Cost)]), Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, curve.CostTitle, curve.SizeTitle, logarithmicX: true, logarithmicY: true);
        double ratio = points[^1].Cost / points[^1].Size;
        // The line is cut where it leaves the axes, for a point far below them has no logarithm that can be drawn.
        double from = Math.Max(frame.X.From, frame.Y.From / ratio), to = Math.Min(frame.X.To, frame.Y.To / ratio);
        model.Series.Add(Marks.Line(Looks.SlopeOne, [new DataPoint(from, from * ratio), new DataPoint(to, to * ratio)]));
        model.Series.Add(Marks.Markers(Looks.Measured, points.Select(point => new DataPoint(point.Size, point.Cost))));
        return new Panel(curve.Heading, [new("measured", Looks.Measured), new("in proportion, through the last point", Looks.SlopeOne)], model, Height);
    }

    private static Span Range(double[] values)
    {
        double low = values.Min(), high = values.Max();
        double decades = Math.Log10(high / low), missing = Math.Max(0.0, LeastDecades - decades) / 2.0, room = (Room * Math.Max(decades, LeastDecades)) + missing;
        return new Span(low * Math.Pow(10.0, -room), high * Math.Pow(10.0, room));
    }
}
