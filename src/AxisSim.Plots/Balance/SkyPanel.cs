using AxisSim.Core.Maps;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Plots.Maps;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace AxisSim.Plots.Balance;

/// <summary>The imbalance about one axis over the sky: tones, the horizon, what friction hides, and the way of the move.</summary>
internal static class SkyPanel
{
    private const double Height = 330;

    /// <summary>Room right of the map for the scale of tones.</summary>
    private const double ScaleRoom = 150;

    /// <summary>Range of the tones: from nothing to the greatest of both axes, so that they compare.</summary>
    public static Span Range(BalancePicture picture) => new(0.0, Math.Max(Span.Of([.. picture.Axes.SelectMany(axis => axis.NewtonMetres).Where(double.IsFinite), 0.0]).To, 1e-3));

    /// <summary>Makes the panel.</summary>
    public static Panel Create(BalancePicture picture, SkyImbalance axis, Span range)
    {
        GridScale x = new(picture.HourAngles, false), y = new(picture.Declinations, false);
        PlotFrame frame = new(new Span(x.Edges[0], x.Edges[^1]), new Span(y.Edges[0], y.Edges[^1]), Drawing.Sheet.SheetWidth - Panel.LeftMargin - ScaleRoom, Height);
        PlotModel model = Panel.NewModel(frame, "Declination, deg", "Hour angle, h (west positive)");
        model.PlotMargins = new OxyThickness(Panel.LeftMargin, model.PlotMargins.Top, ScaleRoom, model.PlotMargins.Bottom);
        foreach (Axis line in model.Axes)
        {
            line.MajorGridlineStyle = LineStyle.None;
        }

        model.Axes[0].MajorStep = 2;
        model.Axes[1].MajorStep = 30;
        model.Annotations.Add(new SkyLayer(x, y, axis, range) { Layer = AnnotationLayer.BelowSeries });
        model.Annotations.Add(new ToneScale { Range = range, Title = "Imbalance, N m" });
        var legend = new List<LegendEntry> { new("tone by the scale", Looks.CellToned) };
        if (axis.NewtonMetres.Any(value => value <= axis.HiddenNewtonMetres))
        {
            legend.Add(new("hidden by friction", Looks.SkyHidden));
        }

        if (axis.NewtonMetres.Any(double.IsNaN))
        {
            legend.Add(new("below the horizon", Looks.SkyGround));
        }

        List<DataPoint> way = [.. picture.Move.Select(place => new DataPoint(place.HourAngle, place.Declination))];
        if (way.Count > 0)
        {
            model.Series.Add(Marks.Line(Looks.SkyHalo, Broken(way)));
            model.Series.Add(Marks.Line(Looks.Path, Broken(way)));
            model.Series.Add(Marks.Markers(Looks.PathStart, [way[0]]));
            model.Series.Add(Marks.Markers(Looks.PathStop, [way[^1]]));
            legend.AddRange([new("the move", Looks.Path), new("its start", Looks.PathStart), new("its end", Looks.PathStop)]);
        }

        if (axis.Worst is { } worst)
        {
            model.Series.Add(Marks.Markers(Looks.MapPoint, [new DataPoint(worst.X, worst.Y)]));
            model.Annotations.Add(new PointLabel { At = new DataPoint(worst.X, worst.Y), Edge = way, Text = worst.Label, Layer = AnnotationLayer.AboveSeries });
            legend.Add(new("greatest", Looks.MapPoint));
        }

        return new Panel(axis.Heading, legend, model, Height);
    }

    // Where the hour angle jumps from one end of the map to the other, or the pole is passed, the line is interrupted.
    private static List<DataPoint> Broken(List<DataPoint> way)
    {
        const double JumpHours = 6.0;
        List<DataPoint> line = [];
        for (int i = 0; i < way.Count; i++)
        {
            if (i > 0 && Math.Abs(way[i].X - way[i - 1].X) > JumpHours)
            {
                line.Add(DataPoint.Undefined);
            }

            line.Add(way[i]);
        }

        return line;
    }
}
