using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Moves;

/// <summary>What the panels on the shared time axis have in common.</summary>
internal static class TimePanels
{
    private const double NoteHeight = 22;
    private const double NoteGap = 8;
    private const double NotePadding = 5;

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

    /// <summary>A note beside an upright line, to the right where there is room, and where it hides least of the lines drawn.</summary>
    public static TextAnnotation NoteBeside(PlotFrame frame, string text, double x, params IReadOnlyList<List<DataPoint>> drawn)
    {
        using InterRenderContext measurer = new();
        double width = measurer.MeasureText(text, null, TextStyle.LegendSize, TextStyle.Regular).Width + (2.0 * NotePadding);
        double beside = ((width / 2) + NoteGap) / frame.PixelsPerX;
        DataPoint spot = FreeSpot.Find(frame, drawn, [x + beside, x - beside], width, NoteHeight);
        return Marks.Note(text, spot.X, spot.Y, HorizontalAlignment.Center, VerticalAlignment.Middle);
    }
}
