using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace AxisSim.Plots.Drawing;

/// <summary>A Skia render context that measures and draws all text with <see cref="InterFont"/>.</summary>
/// <remarks>
/// The base class asks the system for a typeface by name and has no setting for one of our own; on a machine without fonts its
/// text is blank. So the two text methods of the interface are implemented anew. Without text shaping: our text is Latin.
/// </remarks>
internal sealed class InterRenderContext : SkiaRenderContext, IRenderContext
{
    private readonly Dictionary<(double Size, double Weight), SKPaint> _paints = [];

    /// <inheritdoc/>
    public new void DrawText(
        ScreenPoint p,
        string? text,
        OxyColor fill,
        string? fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || !fill.IsVisible())
        {
            return;
        }

        SKPaint paint = Paint(fontSize, fontWeight);
        paint.Color = new SKColor(fill.R, fill.G, fill.B, fill.A);
        paint.TextAlign = horizontalAlignment switch
        {
            HorizontalAlignment.Center => SKTextAlign.Center,
            HorizontalAlignment.Right => SKTextAlign.Right,
            _ => SKTextAlign.Left,
        };
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        SKFontMetrics metrics = paint.FontMetrics;
        float lineHeight = metrics.Descent - metrics.Ascent;
        float rest = lineHeight * (lines.Length - 1);
        float y = verticalAlignment switch
        {
            VerticalAlignment.Middle => -(metrics.Ascent + metrics.Descent + rest) / 2f,
            VerticalAlignment.Bottom => -metrics.Descent - rest,
            _ => -metrics.Ascent,
        };
        int saved = SkCanvas.Save();
        SkCanvas.Translate((float)p.X * DpiScale, (float)p.Y * DpiScale);
        SkCanvas.RotateDegrees((float)rotation);
        foreach (string line in lines)
        {
            SkCanvas.DrawText(line, 0f, y, paint);
            y += lineHeight;
        }

        SkCanvas.RestoreToCount(saved);
    }

    /// <inheritdoc/>
    public new OxySize MeasureText(string? text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text))
        {
            return OxySize.Empty;
        }

        SKPaint paint = Paint(fontSize, fontWeight);
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        SKFontMetrics metrics = paint.FontMetrics;
        float width = 0f;
        foreach (string line in lines)
        {
            width = Math.Max(width, paint.MeasureText(line));
        }

        return new OxySize(width / DpiScale, (metrics.Descent - metrics.Ascent) * lines.Length / DpiScale);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        foreach (SKPaint paint in _paints.Values)
        {
            paint.Dispose();
        }

        _paints.Clear();
        base.Dispose(disposing);
    }

    private SKPaint Paint(double size, double weight)
    {
        if (!_paints.TryGetValue((size, weight), out SKPaint? paint))
        {
            // Unhinted, so that a text is as wide at every scale as it was measured.
            paint = new SKPaint
            {
                Typeface = InterFont.Face(weight),
                TextSize = (float)size * DpiScale,
                IsAntialias = true,
                SubpixelText = true,
                LcdRenderText = false,
                HintingLevel = SKPaintHinting.NoHinting,
                IsStroke = false,
            };
            _paints.Add((size, weight), paint);
        }

        return paint;
    }
}
