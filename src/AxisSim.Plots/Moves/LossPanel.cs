using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Close-up of the loss of sync: how the rotor falls out of step with its command.</summary>
/// <remarks>
/// The load angle is shown in full steps (a quarter of an electrical turn each). The static torque is greatest one full step
/// from the command and reverses beyond two: a rotor that passes two falls into the next stable place four full steps away.
/// </remarks>
internal static class LossPanel
{
    private const double Height = 210;
    private const double SecondsBefore = 0.25;
    private const double SecondsAfter = 0.15;
    private const double RadiansPerFullStep = Math.PI / 2.0;
    private const double MostSteps = 10.0;
    private const double LeastSteps = 3.0;
    private const double UnstableFromSteps = 2.0;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data, LossOfSync loss)
    {
        Trace trace = data.Trace;
        Span window = new(Math.Max(data.Time.From, loss.TimeSeconds - SecondsBefore), Math.Min(data.Time.To, loss.TimeSeconds + SecondsAfter));
        double[] steps = MoveData.Scaled(trace.LoadAngleRadians, 1.0 / RadiansPerFullStep);
        double[] inside = [.. steps.Where((_, i) => trace.TimeSeconds[i] >= window.From && trace.TimeSeconds[i] <= window.To)];
        Span reach = Span.Of(inside);
        Span y = new(Math.Clamp(reach.From * 1.1, -MostSteps, -LeastSteps), Math.Clamp(reach.To * 1.1, LeastSteps, MostSteps));
        PlotFrame frame = new(window.Length > 0 ? window : data.Time, y, Sheet.PlotWidth, Height);
        PlotModel model = Panel.NewModel(frame, "Load angle, full steps", TimePanels.TimeTitle);
        model.Annotations.Add(Marks.Belt(Looks.StableRange, -UnstableFromSteps, UnstableFromSteps));
        model.Annotations.Add(Marks.Zero());
        List<DataPoint> angle = Decimation.Line(frame, trace.TimeSeconds, steps);
        model.Series.Add(Marks.Line(Looks.LoadAngle, angle));
        TimePanels.MarkEvent(model, data);
        model.Annotations.Add(TimePanels.NoteBeside(frame, "sync lost", loss.TimeSeconds, angle));
        return new Panel(
            "Close-up of the loss of sync",
            [new("rotor less command", Looks.LoadAngle), new("the torque pulls it back", Looks.StableRange)],
            model,
            Height);
    }
}
