using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Shaft torque needed, available and delivered, along the planned motion.</summary>
internal static class TorquePanel
{
    private const double Height = 185;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        TraceRange motor = data.Trace[TraceQuantity.MotorTorqueNewtonMetres];
        double[] least = MoveData.Scaled(motor.Least, data.Direction), greatest = MoveData.Scaled(motor.Greatest, data.Direction);
        Stroke needed = data.Stroke(TraceQuantity.NeededTorqueNewtonMetres, data.Direction), available = data.Stroke(TraceQuantity.AvailableTorqueNewtonMetres);
        PlotFrame frame = TimePanels.Frame(data, Span.Of(needed.Y, available.Y, least, greatest).Holding(0).Padded(0.06, 0.1), Height);
        PlotModel model = Panel.NewModel(frame, "Torque, N m", null);
        List<LegendEntry> legend =
        [
            new("available (pull-out)", Looks.AvailableTorque),
            new("needed", Looks.NeededTorque),
            new("delivered (range)", Looks.DeliveredTorque),
        ];
        bool fullSteps = false;
        foreach ((double from, double to) in FullStepTimes(data))
        {
            model.Annotations.Add(new HatchedBand
            {
                From = from,
                To = to,
                Colour = Palette.Grid,
                Layer = OxyPlot.Annotations.AnnotationLayer.BelowAxes,
            });
            fullSteps = true;
        }

        if (fullSteps)
        {
            legend.Add(new("full-stepping", Looks.FullStepping));
        }

        model.Annotations.Add(Marks.Zero());
        model.Series.Add(Marks.Band(Looks.DeliveredTorque, Decimation.Band(frame, data.Middle, least, greatest)));
        model.Series.Add(Marks.Line(Looks.AvailableTorque, Decimation.Line(frame, available.X, available.Y)));
        model.Series.Add(Marks.Line(Looks.NeededTorque, Decimation.Line(frame, needed.X, needed.Y)));
        TimePanels.MarkEvent(model, data);
        return new Panel("Motor shaft torque", legend, model, Height);
    }

    private static IEnumerable<(double From, double To)> FullStepTimes(MoveData data)
    {
        IReadOnlyList<double> mode = data.Trace[TraceQuantity.FullStepping].Greatest;
        int start = -1;
        for (int i = 0; i <= mode.Count; i++)
        {
            bool on = i < mode.Count && mode[i] > 0.5;
            if (on && start < 0)
            {
                start = i;
            }
            else if (!on && start >= 0)
            {
                yield return (data.Trace.FromSeconds[start], data.Trace.ToSeconds[i - 1]);
                start = -1;
            }
        }
    }
}
