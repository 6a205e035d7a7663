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
        IReadOnlyList<double> time = data.Trace.TimeSeconds;
        List<double> a = data.Trace.PhaseACurrentAmperes;
        List<double> b = data.Trace.PhaseBCurrentAmperes;
        double[] amplitude = [.. a.Zip(b, double.Hypot)];
        PlotFrame frame = TimePanels.Frame(data, Span.Of(a, b, amplitude).Holding(0).Padded(0.1, 0.12), Height);
        PlotModel model = Panel.NewModel(frame, "Current, A", null);
        model.Annotations.Add(Marks.Zero());
        model.Series.Add(Marks.Band(Looks.PhaseCurrents, Decimation.Band(frame, time, a, b)));
        model.Series.Add(Marks.Line(Looks.CurrentAmplitude, Decimation.Line(frame, time, amplitude)));
        TimePanels.MarkEvent(model, data);
        return new Panel(
            "Phase current",
            [new("phases A and B (range)", Looks.PhaseCurrents), new("amplitude \u221a(A\u00b2 + B\u00b2)", Looks.CurrentAmplitude)],
            model,
            Height);
    }
}
