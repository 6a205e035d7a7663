using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Envelopes;

/// <summary>The one panel of an envelope.</summary>
internal static class EnvelopePanel
{
    private const double Height = 560;
    private const double DegreesPerRadian = AngleUnit.DegreesPerRadian;

    /// <summary>Room beyond the first and last ramp on a logarithmic axis.</summary>
    private const double RampRoom = 1.06;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(EnvelopePicture picture)
    {
        double[] ramps = [.. picture.Curves.SelectMany(curve => curve.Points).Select(point => point.RampSeconds), .. Own(picture, point => point.RampSeconds, picture.LogarithmicRamps)];
        double[] rates =
        [
            .. picture.Curves.SelectMany(curve => curve.Points).Select(point => point.RateRadiansPerSecond * DegreesPerRadian),
            .. Own(picture, point => point.RateRadiansPerSecond * DegreesPerRadian, false),
        ];
        Span x = picture.LogarithmicRamps ? new Span(ramps.Min() / RampRoom, ramps.Max() * RampRoom) : Span.Of(ramps).Padded(0.03, 0.03);
        Span y = Span.Of(rates).Holding(0).Padded(0.0, 0.1);
        PlotFrame frame = new(x, y, Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, "Greatest safe slew rate, deg/s", "Ramp time, s", picture.LogarithmicRamps);
        List<LegendEntry> legend = [];
        List<DataPoint> lines = [];
        for (int i = 0; i < picture.Curves.Count; i++)
        {
            Look look = Looks.Envelopes[i % Looks.Envelopes.Count];
            List<DataPoint> points =
            [
                .. picture.Curves[i].Points.Select(point => double.IsFinite(point.RateRadiansPerSecond) ? new DataPoint(point.RampSeconds, point.RateRadiansPerSecond * DegreesPerRadian) : DataPoint.Undefined),
            ];
            model.Series.Add(Marks.Line(look, points));
            lines.AddRange(Dense(points));
            legend.Add(new(points.Any(point => point.IsDefined()) ? picture.Curves[i].Label : picture.Curves[i].Label + ": no safe rate", look));
        }

        if (picture.Bound is { } bound && bound.RateRadiansPerSecond * DegreesPerRadian <= y.To)
        {
            double rate = bound.RateRadiansPerSecond * DegreesPerRadian;
            model.Series.Add(Marks.Line(Looks.EnvelopeBound, [new DataPoint(x.From, rate), new DataPoint(x.To, rate)]));
            legend.Add(new(bound.Label, Looks.EnvelopeBound));
        }

        if (picture.Own is { } own && double.IsFinite(own.At.RampSeconds) && double.IsFinite(own.At.RateRadiansPerSecond))
        {
            DataPoint at = new(own.At.RampSeconds, own.At.RateRadiansPerSecond * DegreesPerRadian);
            model.Series.Add(Marks.Markers(Looks.MapPoint, [at]));
            model.Annotations.Add(new PointLabel { At = at, Edge = lines, Text = own.Label, Layer = AnnotationLayer.AboveSeries });
            legend.Add(new("marked point", Looks.MapPoint));
        }

        return new Panel("Safe at and below each curve", legend, model, Height);
    }

    private static double[] Own(EnvelopePicture picture, Func<EnvelopePoint, double> value, bool positive) =>
        picture.Own is { } own && double.IsFinite(value(own.At)) && (!positive || value(own.At) > 0.0) ? [value(own.At)] : [];

    // Points along the lines, for a label to stay off them.
    private static IEnumerable<DataPoint> Dense(List<DataPoint> points)
    {
        for (int i = 1; i < points.Count; i++)
        {
            if (points[i - 1].IsDefined() && points[i].IsDefined())
            {
                for (int k = 0; k <= 20; k++)
                {
                    double share = k / 20.0;
                    yield return new DataPoint(points[i - 1].X + (share * (points[i].X - points[i - 1].X)), points[i - 1].Y + (share * (points[i].Y - points[i - 1].Y)));
                }
            }
        }
    }
}
