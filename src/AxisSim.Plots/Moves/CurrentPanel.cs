using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Phase currents: the range they sweep, and their amplitude.</summary>
internal static class CurrentPanel
{
    private const double Height = 130;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        TraceRange a = data.Trace[TraceQuantity.PhaseACurrentAmperes], b = data.Trace[TraceQuantity.PhaseBCurrentAmperes];
        Stroke amplitude = data.Stroke(TraceQuantity.CurrentAmplitudeAmperes);
        PlotFrame frame = TimePanels.Frame(data, Span.Of(a.Least, a.Greatest, b.Least, b.Greatest, amplitude.Y).Holding(0).Padded(0.1, 0.12), Height);
        PlotModel model = Panel.NewModel(frame, "Current, A", null);
        model.Annotations.Add(Marks.Zero());
        model.Series.Add(Marks.Band(Looks.PhaseCurrents, Decimation.Band(frame, data.Middle, a.Least, a.Greatest, b.Least, b.Greatest)));
        model.Series.Add(Marks.Line(Looks.CurrentAmplitude, Decimation.Line(frame, amplitude.X, amplitude.Y)));
        TimePanels.MarkEvent(model, data);
        return new Panel(
            "Phase current",
            [new("phases A and B (range)", Looks.PhaseCurrents), new("amplitude \u221a(A\u00b2 + B\u00b2)", Looks.CurrentAmplitude)],
            model,
            Height);
    }
}
