using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Axis rate, planned and actual.</summary>
internal static class RatePanel
{
    private const double Height = 185;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        Stroke planned = data.Stroke(TraceQuantity.PlannedRateRadiansPerSecond, AngleUnit.DegreesPerRadian);
        Stroke actual = data.Stroke(TraceQuantity.ActualRateRadiansPerSecond, AngleUnit.DegreesPerRadian);

        // Room above the curve for the note of an event.
        PlotFrame frame = TimePanels.Frame(data, Span.Of(planned.Y, actual.Y).Holding(0).Padded(0.08, data.Event is null ? 0.12 : 0.3), Height);
        PlotModel model = Panel.NewModel(frame, "Rate, deg/s", null);
        model.Annotations.Add(Marks.Zero());

        // The plan on top: a light dashed line shows on the black one where both agree, and on its vibration.
        List<DataPoint> did = Decimation.Line(frame, actual.X, actual.Y), plan = Decimation.Line(frame, planned.X, planned.Y);
        model.Series.Add(Marks.Line(Looks.ActualRate, did));
        model.Series.Add(Marks.Line(Looks.PlannedRate, plan));
        TimePanels.MarkEvent(model, data);
        if (data.Event is (string text, double seconds))
        {
            model.Annotations.Add(TimePanels.NoteBeside(frame, string.Create(CultureInfo.InvariantCulture, $"{text} at {seconds:0.00} s"), seconds, did, plan));
        }

        return new Panel("Axis rate", [new("planned", Looks.PlannedRate), new("actual", Looks.ActualRate)], model, Height);
    }
}
