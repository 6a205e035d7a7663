using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Share of the time in which a phase has met the supply voltage, so that its current is no longer regulated.</summary>
internal static class SaturationPanel
{
    private const double Height = 84;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        double[] percent = MoveData.Scaled(data.Trace[TraceQuantity.Saturated].Mean, 100.0);
        double[] zero = new double[percent.Length];
        PlotFrame frame = TimePanels.Frame(data, new Span(0, 105), Height);
        PlotModel model = Panel.NewModel(frame, "Share, %", null);
        model.Series.Add(Marks.Band(Looks.Saturation, Decimation.Band(frame, data.Middle, percent, zero)));
        TimePanels.MarkEvent(model, data);
        bool never = percent.All(share => !(share > 0));
        return new Panel(never ? "Supply saturation: none" : "Supply saturation", [new("time at the supply voltage", Looks.Saturation)], model, Height);
    }
}
