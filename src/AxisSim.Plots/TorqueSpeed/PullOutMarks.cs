using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Series;

namespace AxisSim.Plots.TorqueSpeed;

/// <summary>Pull-out curves of one mode: closed form as a line, simulation as markers and a thin line through the least, with a pale field up to the greatest of a band, low to high supply as a filled band.</summary>
internal static class PullOutMarks
{
    /// <summary>A band that is nowhere thicker is hidden by the line on it: a legend would promise what nobody sees.</summary>
    private const double LeastPixels = 3.0;

    private const double LeastWidth = 1.4;
    private const double FieldTint = 0.15;
    private const double MarkerPixels = 14.0;

    /// <summary>Adds the band under everything else.</summary>
    public static void AddBand(PlotModel model, PlotFrame frame, TorqueSpeedCurves curves, bool fullStepping, Look look, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        PullOutCurve? low = Find(curves, fullStepping, SupplyLevel.Low);
        PullOutCurve? high = Find(curves, fullStepping, SupplyLevel.High);
        if (low is null || high is null)
        {
            return;
        }

        double[] rpm = [.. curves.SpeedsRadiansPerSecond.Select(PlaneScale.Rpm)];
        (List<DataPoint> Upper, List<DataPoint> Lower) edges = Decimation.Band(frame, rpm, low.ClosedFormNewtonMetres, high.ClosedFormNewtonMetres);
        if (Thickness(frame, low, high) < LeastPixels)
        {
            return;
        }

        model.Series.Add(Marks.Band(look, edges));
        drawn.AddRange([edges.Upper, edges.Lower]);
        legend.Add(new(string.Create(CultureInfo.InvariantCulture, $"{Mode(fullStepping)}, {low.SupplyVolts:0.#}\u2013{high.SupplyVolts:0.#} V"), look));
    }

    /// <summary>Adds the line at nominal supply.</summary>
    public static void AddLine(
        PlotModel model, PlotFrame frame, TorqueSpeedCurves curves, bool fullStepping, Look line, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        if (Find(curves, fullStepping, SupplyLevel.Nominal) is not PullOutCurve curve)
        {
            return;
        }

        double[] rpm = [.. curves.SpeedsRadiansPerSecond.Select(PlaneScale.Rpm)];
        List<DataPoint> points = Decimation.Line(frame, rpm, curve.ClosedFormNewtonMetres);
        model.Series.Add(Marks.Line(line, points));
        drawn.Add(points);
        legend.Add(new(string.Create(CultureInfo.InvariantCulture, $"{Mode(fullStepping)}, closed form, {curve.SupplyVolts:0.#} V"), line));
    }

    /// <summary>Adds the markers at nominal supply, and what lies between least and greatest.</summary>
    public static void AddSimulated(
        PlotModel model, PlotFrame frame, TorqueSpeedCurves curves, bool fullStepping, Look markers, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        if (Find(curves, fullStepping, SupplyLevel.Nominal) is not PullOutCurve curve)
        {
            return;
        }

        List<DataPoint> least = [];
        List<DataPoint> greatest = [];
        bool band = false;
        for (int i = 0; i < curves.SpeedsRadiansPerSecond.Count; i++)
        {
            if (double.IsFinite(curve.LeastNewtonMetres[i]))
            {
                double rpm = PlaneScale.Rpm(curves.SpeedsRadiansPerSecond[i]);
                least.Add(new DataPoint(rpm, curve.LeastNewtonMetres[i]));
                greatest.Add(new DataPoint(rpm, curve.GreatestNewtonMetres[i]));
                band |= curve.At(i).IsBand;
            }
        }

        if (least.Count == 0)
        {
            return;
        }

        if (band)
        {
            Look either = fullStepping ? Looks.FullSteppedEither : Looks.MicrosteppedEither;
            AreaSeries area = Marks.Band(new Look(Swatch.Band, Palette.Tint(either.Colour, FieldTint)), (greatest, least));
            area.StrokeThickness = 0.0;
            model.Series.Insert(0, area);
            model.Series.Add(Marks.Line(either, greatest));
            legend.Add(new($"{Mode(fullStepping)}, may hold up to", either));
        }

        model.Series.Add(Marks.Line(markers with { Swatch = Swatch.Line, Width = LeastWidth, Marker = MarkerType.None, Hollow = false }, least));
        model.Series.Add(Marks.Markers(markers, Spread(frame, least)));
        drawn.Add(least);
        legend.Add(new($"{Mode(fullStepping)}, simulated", markers));
    }

    /// <summary>Points that do not cover each other: a marker wide or more apart, first and last always; the line goes through all.</summary>
    private static List<DataPoint> Spread(PlotFrame frame, List<DataPoint> points)
    {
        List<DataPoint> kept = [];
        foreach (DataPoint point in points)
        {
            if (kept.Count == 0 || (point.X - kept[^1].X) * frame.PixelsPerX >= MarkerPixels || Math.Abs(point.Y - kept[^1].Y) * frame.PixelsPerY >= MarkerPixels)
            {
                kept.Add(point);
            }
        }

        return kept;
    }

    private static double Thickness(PlotFrame frame, PullOutCurve low, PullOutCurve high) =>
        low.ClosedFormNewtonMetres.Zip(high.ClosedFormNewtonMetres, (a, b) => Math.Abs(b - a)).Where(double.IsFinite).DefaultIfEmpty(0.0).Max() * frame.PixelsPerY;

    private static string Mode(bool fullStepping) => fullStepping ? "full-stepped" : "microstepped";

    private static PullOutCurve? Find(TorqueSpeedCurves curves, bool fullStepping, SupplyLevel supply) =>
        curves.Curves.FirstOrDefault(c => c.FullStepping == fullStepping && c.Supply == supply);
}
