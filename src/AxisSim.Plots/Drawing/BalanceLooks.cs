using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>Looks of the figure of a balance.</summary>
internal static partial class Looks
{
    public static readonly Look SkyGround = new(Swatch.Cell, Palette.Frame, Pattern: Pattern.Rising, Fill: Palette.LightShade);
    public static readonly Look SkyHidden = new(Swatch.Cell, Palette.QuietInk, Pattern: Pattern.Level, Fill: Palette.Paper);
    public static readonly Look SkyHalo = new(Swatch.Line, Palette.Paper, 6.0);

    public static readonly Look BarPole = new(Swatch.Upright, Palette.QuietInk, 1.8, Dash.DashDot);
    public static readonly Look BarEnd = new(Swatch.Upright, Palette.Vermillion, 2.0, Dash.Dotted);
    public static readonly Look BarBar = new(Swatch.Cell, Palette.Ink, Fill: Palette.Shade);
    public static readonly Look BarPart = new(Swatch.Cell, Palette.Blue, Fill: Palette.Tint(Palette.SkyBlue, 0.15));
    public static readonly Look BarWeights = new(Swatch.Cell, Palette.Ink, Fill: Palette.QuietInk);
    public static readonly Look BarPoint = new(Swatch.Marker, Palette.Black, Marker: MarkerType.Circle);
    public static readonly Look BarAdvised = new(Swatch.Line, Palette.Vermillion, 2.4, Dash.Dashed);
}
