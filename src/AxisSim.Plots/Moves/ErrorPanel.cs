using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.Moves;

/// <summary>Axis error over the whole run, in the unit that fits its range.</summary>
internal static class ErrorPanel
{
    private const double Height = 160;

    /// <summary>Below this a payload error is that of a rigid payload, rad (0.002 arcsec).</summary>
    private const double SameErrorRadians = 1e-8;

    /// <summary>Makes the panel.</summary>
    public static Panel Create(MoveData data)
    {
        TraceRange axisError = data.Trace[TraceQuantity.AxisErrorRadians], payloadError = data.Trace[TraceQuantity.PayloadErrorRadians];
        Span range = Span.Of(axisError.Least, axisError.Greatest, payloadError.Least, payloadError.Greatest);
        AngleUnit unit = AngleUnit.For(Math.Max(Math.Abs(range.From), Math.Abs(range.To)));
        Stroke axis = data.Stroke(TraceQuantity.AxisErrorRadians, unit.PerRadian), payload = data.Stroke(TraceQuantity.PayloadErrorRadians, unit.PerRadian);
        bool flexible = Differs(axisError.Least, payloadError.Least) || Differs(axisError.Greatest, payloadError.Greatest);

        List<LegendEntry> legend = [new("axis", Looks.AxisError)];
        Span y = (flexible ? Span.Of(axis.Y, payload.Y) : Span.Of(axis.Y)).Holding(0);
        double tolerance = (data.Outcome.Settling?.ToleranceRadians ?? 0) * unit.PerRadian;
        double rest = Array.FindLast(payload.Y, double.IsFinite);
        if (tolerance > 0)
        {
            y = y.Holding(rest + tolerance).Holding(rest - tolerance);
        }

        PlotFrame frame = TimePanels.Frame(data, y.Padded(0.1, 0.1), Height);
        PlotModel model = Panel.NewModel(frame, "Error, " + unit.Name, TimePanels.TimeTitle);

        // A belt thinner than two pixels would look like a grid line: it is shown in the close-up instead.
        if (tolerance * 2.0 * frame.PixelsPerY >= 2.0)
        {
            model.Annotations.Add(Marks.Belt(Looks.SettleBand, rest - tolerance, rest + tolerance, data.Outcome.SlewSeconds));
            legend.Add(new(string.Create(CultureInfo.InvariantCulture, $"\u00b1{tolerance:0.###} {unit.Name} about the final rest"), Looks.SettleBand));
        }

        model.Annotations.Add(Marks.Zero());
        model.Series.Add(Marks.Line(Looks.AxisError, Decimation.Line(frame, axis.X, axis.Y)));
        if (flexible)
        {
            model.Series.Add(Marks.Line(Looks.PayloadError, Decimation.Line(frame, payload.X, payload.Y)));
            legend.Insert(1, new("payload", Looks.PayloadError));
        }

        TimePanels.MarkEvent(model, data);
        return new Panel("Axis error, actual less planned", legend, model, Height);
    }

    private static bool Differs(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        for (int i = 0; i < a.Count; i++)
        {
            if (Math.Abs(a[i] - b[i]) > SameErrorRadians)
            {
                return true;
            }
        }

        return false;
    }
}
