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
        IReadOnlyList<double> time = data.Trace.TimeSeconds;
        double[] needed = MoveData.Scaled(data.Trace.NeededTorqueNewtonMetres, data.Direction);
        double[] delivered = MoveData.Scaled(data.Trace.MotorTorqueNewtonMetres, data.Direction);
        double[] available = [.. data.Trace.AvailableTorqueNewtonMetres.Select(Math.Abs)];
        PlotFrame frame = TimePanels.Frame(data, Span.Of(needed, available, delivered).Holding(0).Padded(0.06, 0.1), Height);
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
        model.Series.Add(Marks.Band(Looks.DeliveredTorque, Decimation.Band(frame, time, delivered)));
        model.Series.Add(Marks.Line(Looks.AvailableTorque, Decimation.Line(frame, time, available)));
        model.Series.Add(Marks.Line(Looks.NeededTorque, Decimation.Line(frame, time, needed)));
        TimePanels.MarkEvent(model, data);
        return new Panel("Motor shaft torque", legend, model, Height);
    }

    private static IEnumerable<(double From, double To)> FullStepTimes(MoveData data)
    {
        List<double> time = data.Trace.TimeSeconds;
        List<double> mode = data.Trace.FullStepping;
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
                yield return (time[start], time[Math.Min(i, time.Count - 1)]);
                start = -1;
            }
        }
    }
}
