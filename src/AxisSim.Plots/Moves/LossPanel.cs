using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Close-up of the loss of sync: how the rotor falls out of step with its command.</summary>
internal static class LossPanel
{
    private const double Height = 210;
    private const double LeastSteps = 3.0;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data, LossOfSync loss)
    {
        CloseUp near = data.Trace.Loss;
        Stroke steps = Stroke.Of(near, LoadAngle.FullStepsPerRadian);
        Span window = near.Count > 0 ? Span.Of(near.FromSeconds, near.ToSeconds) : data.Time;
        PlotFrame frame = new(window, LoadAngle.Range(steps.Y, LeastSteps), Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, LoadAngle.Title, TimePanels.TimeTitle);
        model.Annotations.Add(LoadAngle.Belt());
        model.Annotations.Add(Marks.Zero());
        List<DataPoint> angle = Decimation.Line(frame, steps.X, steps.Y);
        model.Series.Add(Marks.Line(Looks.LoadAngle, angle));
        TimePanels.MarkEvent(model, data);
        model.Annotations.Add(TimePanels.NoteBeside(frame, "sync lost", loss.TimeSeconds, angle));
        return new Panel(
            "Close-up of the loss of sync",
            [new("rotor less command", Looks.LoadAngle), LoadAngle.Stable],
            model,
            Height);
    }
}
