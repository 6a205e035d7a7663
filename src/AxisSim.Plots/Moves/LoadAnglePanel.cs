using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Load angle over the whole run: how far the rotor swings about its command, and how much of the stable range that takes.</summary>
internal static class LoadAnglePanel
{
    private const double Height = 130;

    /// <summary>The crest of the static torque lies one full step away: it is always in sight.</summary>
    private const double LeastSteps = 1.2;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        Stroke steps = data.Stroke(TraceQuantity.LoadAngleRadians, LoadAngle.FullStepsPerRadian);
        PlotFrame frame = TimePanels.Frame(data, LoadAngle.Range(steps.Y, LeastSteps), Height);
        PlotModel model = Panel.NewModel(frame, "Angle, full steps", null);
        model.Annotations.Add(LoadAngle.Belt());
        model.Annotations.Add(Marks.Zero());
        model.Series.Add(Marks.Line(Looks.LoadAngle, Decimation.Line(frame, steps.X, steps.Y)));
        TimePanels.MarkEvent(model, data);
        return new Panel("Load angle", [new("rotor less command", Looks.LoadAngle), LoadAngle.Stable], model, Height);
    }
}
