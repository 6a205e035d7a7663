using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.TorqueSpeed;

/// <summary>Pull-out curves of one mode: closed form as a line, simulation as markers, low to high supply as a band.</summary>
internal static class PullOutMarks
{
    /// <summary>A band that is nowhere thicker is hidden by the line on it: a legend would promise what nobody sees.</summary>
    private const double LeastPixels = 3.0;

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

    /// <summary>Adds the markers at nominal supply.</summary>
    public static void AddSimulated(
        PlotModel model, TorqueSpeedCurves curves, bool fullStepping, Look markers, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        if (Find(curves, fullStepping, SupplyLevel.Nominal) is not PullOutCurve curve)
        {
            return;
        }

        List<DataPoint> simulated =
        [
            .. curve.SimulatedNewtonMetres
                .Select((torque, i) => new DataPoint(PlaneScale.Rpm(curves.SpeedsRadiansPerSecond[i]), torque))
                .Where(p => double.IsFinite(p.Y)),
        ];
        if (simulated.Count == 0)
        {
            return;
        }

        model.Series.Add(Marks.Markers(markers, simulated));
        drawn.AddRange(simulated.Select(p => new List<DataPoint> { p }));
        legend.Add(new($"{Mode(fullStepping)}, simulated", markers));
    }

    private static double Thickness(PlotFrame frame, PullOutCurve low, PullOutCurve high) =>
        low.ClosedFormNewtonMetres.Zip(high.ClosedFormNewtonMetres, (a, b) => Math.Abs(b - a)).Where(double.IsFinite).DefaultIfEmpty(0.0).Max() * frame.PixelsPerY;

    private static string Mode(bool fullStepping) => fullStepping ? "full-stepped" : "microstepped";

    private static PullOutCurve? Find(TorqueSpeedCurves curves, bool fullStepping, SupplyLevel supply) =>
        curves.Curves.FirstOrDefault(c => c.FullStepping == fullStepping && c.Supply == supply);
}
