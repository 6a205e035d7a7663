using OxyPlot;
using SkiaSharp;

namespace AxisSim.Plots.Drawing;

/// <summary>OxyPlot's SVG context with text set on its true baseline.</summary>
/// <remarks>
/// The base class takes the bottom of a text's box for its baseline (or leaves it to an attribute that many viewers ignore),
/// so that all text sinks by a descent. Here the baseline follows from the font's metrics.
/// </remarks>
internal sealed class InterSvgContext : SvgRenderContext
{
    /// <summary>Starts a drawing on a white ground.</summary>
    public InterSvgContext(Stream stream, double width, double height, InterRenderContext measurer)
        : base(stream, width, height, false, measurer, OxyColors.White, true)
    {
    }

    /// <inheritdoc/>
    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor c,
        string fontFamily,
        double fontSize,
        double fontWeight,
        double rotate,
        HorizontalAlignment halign,
        VerticalAlignment valign,
        OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text))
        {
            return;
        }

        using SKFont font = new(InterFont.Face(fontWeight), (float)fontSize);
        SKFontMetrics metrics = font.Metrics;
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        double lineHeight = metrics.Descent - metrics.Ascent;
        double rest = lineHeight * (lines.Length - 1);
        double down = valign switch
        {
            VerticalAlignment.Middle => -(metrics.Ascent + metrics.Descent + rest) / 2,
            VerticalAlignment.Bottom => -metrics.Descent - rest,
            _ => -metrics.Ascent,
        };
        (double sin, double cos) = Math.SinCos(rotate * Math.PI / 180);
        foreach (string line in lines)
        {
            base.DrawText(new ScreenPoint(p.X - (sin * down), p.Y + (cos * down)), line, c, fontFamily, fontSize, fontWeight, rotate, halign, VerticalAlignment.Bottom, maxSize);
            down += lineHeight;
        }
    }
}
