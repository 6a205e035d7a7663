using AxisSim.Core.Outcomes;
using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>Looks of maps, envelopes, growth and reductions.</summary>
internal static partial class Looks
{
    public static readonly Look CellToned = new(Swatch.Cell, Palette.Frame, Fill: Palette.Tone(0.5));
    public static readonly Look CellNoValue = new(Swatch.Cell, Palette.Green, Pattern: Pattern.Upright, Fill: Palette.Tint(Palette.Green, 0.12));
    public static readonly Look MapEdge = new(Swatch.Line, Palette.Black, 2.4);
    public static readonly Look MapPoint = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Diamond, Hollow: true, MarkerSize: 9);

    public static readonly IReadOnlyList<Look> Envelopes =
    [
        new(Swatch.Line, Palette.Black, 2.4, Dash.Solid, MarkerType.Circle),
        new(Swatch.Line, Palette.Vermillion, 2.4, Dash.Dashed, MarkerType.Square),
        new(Swatch.Line, Palette.Blue, 2.4, Dash.DashDot, MarkerType.Triangle),
        new(Swatch.Line, Palette.Green, 2.4, Dash.Dotted, MarkerType.Diamond),
        new(Swatch.Line, Palette.Orange, 2.4, Dash.Dashed, MarkerType.Circle, Hollow: true),
        new(Swatch.Line, Palette.QuietInk, 2.4, Dash.Solid, MarkerType.Square, Hollow: true),
        new(Swatch.Line, Palette.SkyBlue, 2.4, Dash.DashDot, MarkerType.Triangle, Hollow: true),
    ];

    public static readonly Look EnvelopeBound = new(Swatch.Line, Palette.Frame, 1.4, Dash.Dotted);

    public static readonly Look ComparisonNeed = new(Swatch.Line, Palette.Shade, 5.0);

    public static readonly Look Measured = new(Swatch.Marker, Palette.Blue, Marker: MarkerType.Circle);
    public static readonly Look FittedLine = new(Swatch.Line, Palette.Black, 2.4);
    public static readonly Look SlopeOne = new(Swatch.Line, Palette.QuietInk, 1.8, Dash.Dashed);

    public static readonly Look ReductionSimulated = new(Swatch.Line, Palette.Black, 2.4, Dash.Solid, MarkerType.Circle);
    public static readonly Look ReductionPaper = new(Swatch.Line, Palette.Blue, 2.2, Dash.Dashed, MarkerType.Square, Hollow: true);
    public static readonly Look ReductionPulses = new(Swatch.Line, Palette.Orange, 2.2, Dash.DashDot, MarkerType.Triangle);
    public static readonly Look ReductionLevel = new(Swatch.Line, Palette.Green, 2.2, Dash.Dotted);
    public static readonly Look ReductionOwn = new(Swatch.Upright, Palette.Vermillion, 2.2);
    public static readonly Look ReductionMatched = new(Swatch.Upright, Palette.QuietInk, 2.2, Dash.DashDot);
    public static readonly Look FrontMicro = new(Swatch.Marker, Palette.Blue, Marker: MarkerType.Circle, Hollow: true);
    public static readonly Look FrontFull = new(Swatch.Marker, Palette.Vermillion, Marker: MarkerType.Square, MarkerSize: 4.5);
    public static readonly Look FrontShort = new(Swatch.Marker, Palette.Frame, Marker: MarkerType.Triangle, MarkerSize: 4.5);
    public static readonly Look FrontAsked = new(Swatch.Line, Palette.Black, 1.6, Dash.Dashed);

    private static readonly (MoveEnd Cell, Look Look)[] s_cells =
    [
        (MoveEnd.Arrives, new(Swatch.Cell, Palette.Frame, Fill: Palette.Tint(Palette.Green, 0.4))),
        (MoveEnd.Stalls, new(Swatch.Cell, Palette.Vermillion, Pattern: Pattern.Rising, Fill: Palette.Tint(Palette.Vermillion, 0.22))),
        (MoveEnd.ClutchSlips, new(Swatch.Cell, Palette.QuietInk, Pattern: Pattern.Falling, Fill: Palette.Tint(Palette.Orange, 0.45))),
        (MoveEnd.DoesNotSettle, new(Swatch.Cell, Palette.Green, Pattern: Pattern.Level, Fill: Palette.Tint(Palette.Green, 0.12))),
        (MoveEnd.Broken, new(Swatch.Cell, Palette.Black, Pattern: Pattern.Crossed, Fill: Palette.Shade)),
        (MoveEnd.NotWorkable, new(Swatch.Cell, Palette.QuietInk, Pattern: Pattern.Squared, Fill: Palette.LightShade)),
        (MoveEnd.NotValid, new(Swatch.Cell, Palette.Frame, Pattern: Pattern.Crossed, Fill: Palette.Paper)),
        (MoveEnd.Unknown, new(Swatch.Cell, Palette.Frame, Fill: Palette.Paper)),
    ];

    // Asked for every cell of a map.
    private static readonly Look[] s_lookOfEnd = [.. s_cells.OrderBy(kind => kind.Cell).Select(kind => kind.Look)];

    /// <summary>The kinds of cells, in the order of legends.</summary>
    public static IReadOnlyList<MoveEnd> CellKinds { get; } = [.. s_cells.Select(kind => kind.Cell)];

    /// <summary>The look of a kind of cells.</summary>
    public static Look Cell(MoveEnd cell) => s_lookOfEnd[(int)cell];
}
