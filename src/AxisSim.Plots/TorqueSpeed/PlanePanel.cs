using AxisSim.Core.Studies;
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

        List<LegendEntry> lines = [];
        List<LegendEntry> markers = [];
        List<LegendEntry> bands = [];
        List<LegendEntry> path = [];
        List<LegendEntry> limits = [];
        List<List<DataPoint>> drawn = [];
        model.Annotations.Add(Marks.Zero());
        AddUnstable(model, curves, limits);
        PullOutMarks.AddBand(model, frame, curves, true, Looks.FullSteppedSupply, bands);
        PullOutMarks.AddBand(model, frame, curves, false, Looks.MicrosteppedSupply, bands);
        PullOutMarks.AddLine(model, frame, curves, true, Looks.FullStepped, lines, drawn);
        PullOutMarks.AddLine(model, frame, curves, false, Looks.Microstepped, lines, drawn);
        PathMarks.Add(model, frame, curves.Path, path, drawn);
        PullOutMarks.AddSimulated(model, curves, true, Looks.FullSteppedSimulated, markers, drawn);
        PullOutMarks.AddSimulated(model, curves, false, Looks.MicrosteppedSimulated, markers, drawn);
        AddChangeover(model, frame, curves.ChangeoverRadiansPerSecond, limits, drawn);
        LabelBands(model, frame, curves.UnstableBands, drawn);
        return new Panel("Pull-out torque and the move", [.. lines, .. markers, .. bands, .. path, .. limits], model, PlaneScale.Height);
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
            string ranges = string.Join(", ", curves.UnstableBands.Select(b => $"{PlaneScale.RpmText(b.FromRadiansPerSecond)}\u2013{PlaneScale.RpmText(b.ToRadiansPerSecond)}"));
            legend.Add(new($"full-stepping unstable: {ranges} rpm", Looks.Unstable));
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
                AddUprightNote(model, frame, "unstable", [0.5 * (from + to), to + Offset(frame), from - Offset(frame)], drawn);
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
