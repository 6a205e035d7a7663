using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace AxisSim.Plots.TorqueSpeed;

/// <summary>The torque-speed plane.</summary>
internal static class PlanePanel
{
    private const double LabelHeight = 24;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(TorqueSpeedCurves curves, double totalRatio)
    {
        PlotFrame frame = PlaneScale.Frame(curves);
        PlotModel model = Panel.NewModel(frame, "Torque at the motor shaft, N m", "Motor speed, rpm");
        double axisRate = PlaneScale.DegreesPerSecondPerRpm / totalRatio;
        LinearAxis top = Panel.NewAxis(AxisPosition.Top, new Span(frame.X.From * axisRate, frame.X.To * axisRate), "Axis rate, deg/s", 100);
        top.MajorGridlineStyle = LineStyle.None;
        top.Key = "axis rate";
        model.Axes.Add(top);
        OxyThickness margins = model.PlotMargins;
        model.PlotMargins = new OxyThickness(margins.Left, Panel.AxisTitleRoom, margins.Right, margins.Bottom);

        List<LegendEntry> full = [];
        List<LegendEntry> micro = [];
        List<LegendEntry> path = [];
        List<LegendEntry> limits = [];
        List<List<DataPoint>> drawn = [];
        model.Annotations.Add(Marks.Zero());
        AddUnstable(model, curves, limits);
        PullOutMarks.AddBand(model, frame, curves, true, Looks.FullSteppedSupply, full, drawn);
        PullOutMarks.AddBand(model, frame, curves, false, Looks.MicrosteppedSupply, micro, drawn);

        // Saturated, both modes share one curve: the dashes lie on the solid line, so that both are seen.
        PullOutMarks.AddLine(model, frame, curves, false, Looks.Microstepped, micro, drawn);
        PullOutMarks.AddLine(model, frame, curves, true, Looks.FullStepped, full, drawn);
        PathMarks.Add(model, frame, curves.Path, path, drawn);
        PullOutMarks.AddSimulated(model, curves, false, Looks.MicrosteppedSimulated, micro, drawn);
        PullOutMarks.AddSimulated(model, curves, true, Looks.FullSteppedSimulated, full, drawn);
        AddChangeover(model, frame, curves.ChangeoverRadiansPerSecond, limits, drawn);
        LabelBands(model, frame, curves.UnstableBands, drawn);

        // Drawn from the bands up, read from the lines on.
        IEnumerable<LegendEntry> modes = full.OrderBy(entry => entry.Look.Swatch).Concat(micro.OrderBy(entry => entry.Look.Swatch));
        return new Panel("Pull-out torque and the move", [.. modes, .. path, .. limits], model, PlaneScale.Height);
    }

    private static void AddUnstable(PlotModel model, TorqueSpeedCurves curves, List<LegendEntry> legend)
    {
        foreach (SpeedBand band in curves.UnstableBands)
        {
            model.Annotations.Add(new HatchedBand
            {
                From = PlaneScale.Rpm(band.FromRadiansPerSecond),
                To = PlaneScale.Rpm(band.ToRadiansPerSecond),
                Colour = Palette.Shade,
                Layer = AnnotationLayer.BelowAxes,
            });
        }

        if (curves.UnstableBands.Count > 0)
        {
            legend.Add(new("unstable in full steps", Looks.Unstable));
        }
    }

    private static void AddChangeover(PlotModel model, PlotFrame frame, double changeover, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        double rpm = PlaneScale.Rpm(changeover);
        if (!double.IsFinite(rpm) || rpm > frame.X.To)
        {
            return;
        }

        model.Annotations.Add(Marks.Upright(Looks.Changeover, rpm));
        string text = $"full steps above {PlaneScale.RpmText(changeover)} rpm";
        legend.Add(new("changeover speed", Looks.Changeover));
        AddUprightNote(model, frame, text, [rpm + Offset(frame), rpm - Offset(frame)], drawn);
        drawn.Add([new DataPoint(rpm, frame.Y.From), new DataPoint(rpm, frame.Y.To)]);
    }

    private static void LabelBands(PlotModel model, PlotFrame frame, IReadOnlyList<SpeedBand> bands, List<List<DataPoint>> drawn)
    {
        foreach (SpeedBand band in bands)
        {
            double from = PlaneScale.Rpm(band.FromRadiansPerSecond);
            double to = Math.Min(PlaneScale.Rpm(band.ToRadiansPerSecond), frame.X.To);
            if (from < to)
            {
                AddUprightNote(model, frame, $"unstable {PlaneScale.RpmText(band.FromRadiansPerSecond)}\u2013{PlaneScale.RpmText(band.ToRadiansPerSecond)} rpm", [0.5 * (from + to), to + Offset(frame), from - Offset(frame)], drawn);
            }
        }
    }

    private static double Offset(PlotFrame frame) => ((LabelHeight / 2) + 4) / frame.PixelsPerX;

    /// <summary>A text that runs upwards, where it hides least.</summary>
    private static void AddUprightNote(PlotModel model, PlotFrame frame, string text, ReadOnlySpan<double> centres, List<List<DataPoint>> drawn)
    {
        using InterRenderContext measurer = new();
        double length = measurer.MeasureText(text, null, TextStyle.LegendSize, TextStyle.Regular).Width + 10;
        DataPoint spot = FreeSpot.Find(frame, drawn, centres, LabelHeight, length);
        TextAnnotation note = Marks.Note(text, spot.X, spot.Y, HorizontalAlignment.Center, VerticalAlignment.Middle);
        note.TextRotation = -90;
        model.Annotations.Add(note);
        double half = length / 2 / frame.PixelsPerY;
        drawn.Add([new DataPoint(spot.X, spot.Y - half), new DataPoint(spot.X, spot.Y + half)]);
    }
}
