using AxisSim.Core.Comparisons;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Comparisons;

/// <summary>The one panel of a comparison.</summary>
internal static class ComparisonPanel
{
    private const double Height = 560;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(IReadOnlyList<ComparisonCurve> curves, string needLabel)
    {
        AxisPoint[] need = [.. (curves[0].Curve.Needed).Where(CanBeDrawn)];
        AxisPoint[] all = [.. curves.SelectMany(curve => curve.Curve.ClosedForm.Concat(curve.Curve.Simulated)).Concat(need).Where(CanBeDrawn)];
        Span x = Span.Of([.. all.Select(point => Degrees(point))]).Holding(0).Padded(0.02, 0.02);
        Span y = Span.Of([.. all.Select(point => point.TorqueNewtonMetres)]).Holding(0).Padded(0.04, 0.07);
        PlotFrame frame = new(x, y, Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, "Motor torque times total reduction, N m", "Rate of the axis, deg/s");
        model.Annotations.Add(Marks.Zero());
        List<LegendEntry> legend = [];
        if (need.Length > 0)
        {
            model.Series.Add(Marks.Line(Looks.ComparisonNeed, [.. need.Select(ToPlane)]));
            legend.Add(new(needLabel, Looks.ComparisonNeed));
        }

        for (int i = curves.Count - 1; i >= 0; i--)
        {
            Look look = Looks.Envelopes[i % Looks.Envelopes.Count];
            CandidateCurve curve = curves[i].Curve;
            model.Series.Add(Marks.Line(look with { Marker = MarkerType.None }, [.. curve.ClosedForm.Where(CanBeDrawn).Select(ToPlane)]));
            model.Series.Add(Marks.Markers(look, curve.Simulated.Where(CanBeDrawn).Select(ToPlane)));
            legend.Insert(0, new(curves[i].Label, look));
        }

        AxisPoint[] safe = [.. curves.Select(curve => curve.Curve.Safe).OfType<AxisPoint>().Where(CanBeDrawn)];
        if (safe.Length > 0)
        {
            model.Series.Add(Marks.Markers(Looks.MapPoint, safe.Select(ToPlane)));
            legend.Add(new("safe slew rate", Looks.MapPoint));
        }

        return new Panel("Lines: closed form; marks on them: simulated pull-out", legend, model, Height);
    }

    /// <summary>Whether a point is one of numbers.</summary>
    public static bool CanBeDrawn(AxisPoint point) => double.IsFinite(point.RateRadiansPerSecond) && double.IsFinite(point.TorqueNewtonMetres);

    private static double Degrees(AxisPoint point) => point.RateRadiansPerSecond * AngleUnit.DegreesPerRadian;

    private static DataPoint ToPlane(AxisPoint point) => new(Degrees(point), point.TorqueNewtonMetres);
}
