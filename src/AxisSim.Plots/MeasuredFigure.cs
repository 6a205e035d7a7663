using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Motors;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.TorqueSpeed;
using OxyPlot;

namespace AxisSim.Plots;

/// <summary>A measured pull-out curve with the datasheet's and the fitted motor, one pair of lines for each supply, current and mode.</summary>
public static class MeasuredFigure
{
    private const double Height = 460;
    private const int Points = 80;
    private const double Beyond = 1.15;

    /// <summary>Makes the figure.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="datasheet">The motor of the datasheet.</param>
    /// <param name="title">Title.</param>
    /// <param name="sentence">A sentence under the title; may be empty.</param>
    public static IFigure Create(MeasuredFit fit, StepperMotor datasheet, string title, string sentence = "")
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(datasheet);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(sentence);
        double top = Beyond * Math.Max(1.0, fit.Points.Max(point => point.SpeedRadiansPerSecond));
        MeasuredPoint[] conditions = [.. fit.Points.DistinctBy(point => (point.SupplyVolts, point.PhaseAmperes, point.FullStepping))];
        List<DataPoint> Line(StepperMotor motor, MeasuredPoint at, double loss) =>
        [
            .. Enumerable.Range(0, Points + 1).Select(i => top * i / Points).Select(speed => new DataPoint(PlaneScale.Rpm(speed), PullOutFit.Torque(motor, at with { SpeedRadiansPerSecond = speed }, loss))),
        ];
        List<DataPoint>[] before = [.. conditions.Select(at => Line(datasheet, at, 0.0))], after = [.. conditions.Select(at => Line(fit.Fitted, at, fit.VoltageLossVolts))];
        DataPoint[] measured = [.. fit.Points.Select(point => new DataPoint(PlaneScale.Rpm(point.SpeedRadiansPerSecond), point.TorqueNewtonMetres))];
        double[] torques = [.. before.Concat(after).SelectMany(line => line).Concat(measured).Select(point => point.Y)];
        PlotFrame frame = new(new Span(0, PlaneScale.Rpm(top)).Padded(0.02, 0.02), Span.Of(torques).Holding(0).Padded(0.03, 0.08), Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, "Pull-out torque, N m", "Motor speed, rpm");
        Array.ForEach(before, line => model.Series.Add(Marks.Line(Looks.SlopeOne, line)));
        Array.ForEach(after, line => model.Series.Add(Marks.Line(Looks.FittedLine, line)));
        model.Series.Add(Marks.Markers(Looks.Measured, measured));
        string description = (sentence.Length > 0 ? sentence + " " : "") + string.Create(CultureInfo.InvariantCulture, $"{measured.Length} measured points of pull-out torque against motor speed, the datasheet's curve and the {(fit.Kind == FitKind.Cap ? "capped" : "fitted")} one.");
        LegendEntry[] legend = [new("measured", Looks.Measured), new("datasheet", Looks.SlopeOne), new(fit.Kind == FitKind.Cap ? "capped" : "fitted", Looks.FittedLine)];
        return new Sheet(title, sentence, description, [new Panel("Closed form against the measurement", legend, model, Height)]);
    }
}
