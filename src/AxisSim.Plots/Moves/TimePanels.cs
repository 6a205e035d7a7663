using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Moves;

/// <summary>What the panels on the shared time axis have in common.</summary>
internal static class TimePanels
{
    public const string TimeTitle = "Time from the start of the move, s";

    /// <summary>The frame of a panel on the shared time axis.</summary>
    public static PlotFrame Frame(MoveData data, Span y, double height) => new(data.Time, y, Sheet.PlotWidth, height);

    /// <summary>Marks the loss of sync or the slipping clutch, if there is one.</summary>
    public static void MarkEvent(PlotModel model, MoveData data)
    {
        if (data.Event is (_, double seconds))
        {
            model.Annotations.Add(Marks.Upright(Looks.Event, seconds));
        }
    }

    /// <summary>A note at the top beside an upright line, on the side where there is room.</summary>
    public static TextAnnotation NoteBeside(PlotFrame frame, string text, double x)
    {
        bool toTheRight = (x - frame.X.From) < 0.7 * frame.X.Length;
        double gap = (toTheRight ? 6.0 : -6.0) / frame.PixelsPerX;
        double top = frame.Y.To - (5.0 / frame.PixelsPerY);
        return Marks.Note(text, x + gap, top, toTheRight ? HorizontalAlignment.Left : HorizontalAlignment.Right, VerticalAlignment.Top);
    }
}
