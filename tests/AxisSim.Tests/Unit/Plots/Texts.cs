using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>A context that draws nothing and keeps where each text would stand.</summary>
internal sealed class Texts : ClippingRenderContext, IDisposable
{
    /// <summary>Ascent and descent hold air above and below the letters: boxes this much smaller are what is seen, px.</summary>
    private const double Air = 3.0;

    private readonly InterRenderContext _measurer = new();

    public List<(string Text, OxyRect Box)> Boxes { get; } = [];

    /// <summary>A text that leaves the sheet or stands on another; null when there is none.</summary>
    public string? Fault(IFigure figure)
    {
        for (int i = 0; i < Boxes.Count; i++)
        {
            (string text, OxyRect box) = Boxes[i];
            if (box.Left < 0 || box.Top < 0 || box.Right > figure.Width || box.Bottom > figure.Height)
            {
                return $"\"{text}\" leaves the sheet: {box}";
            }

            if (Boxes.Skip(i + 1).Where(other => Meet(box, other.Box)).Select(other => other.Text).FirstOrDefault() is { } over)
            {
                return $"\"{text}\" stands on \"{over}\"";
            }
        }

        return null;
    }

    private static bool Meet(OxyRect a, OxyRect b) => a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    public void Dispose() => _measurer.Dispose();

    public override void DrawText(
        ScreenPoint p, string text, OxyColor fill, string fontFamily, double fontSize, double fontWeight, double rotation, HorizontalAlignment horizontalAlignment, VerticalAlignment verticalAlignment, OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text))
        {
            return;
        }

        OxySize size = _measurer.MeasureText(text, null, fontSize, fontWeight);
        double left = horizontalAlignment switch { HorizontalAlignment.Center => -size.Width / 2, HorizontalAlignment.Right => -size.Width, _ => 0 };
        double top = verticalAlignment switch { VerticalAlignment.Middle => -size.Height / 2, VerticalAlignment.Bottom => -size.Height, _ => 0 };
        double angle = rotation * Math.PI / 180.0;
        ScreenPoint[] corners =
        [
            .. new[] { (left, top + Air), (left + size.Width, top + Air), (left, top + size.Height - Air), (left + size.Width, top + size.Height - Air) }
                .Select(c => new ScreenPoint(p.X + (c.Item1 * Math.Cos(angle)) - (c.Item2 * Math.Sin(angle)), p.Y + (c.Item1 * Math.Sin(angle)) + (c.Item2 * Math.Cos(angle)))),
        ];
        double x = corners.Min(c => c.X), y = corners.Min(c => c.Y);
        Boxes.Add((text, new OxyRect(x, y, corners.Max(c => c.X) - x, corners.Max(c => c.Y) - y)));
    }

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) => _measurer.MeasureText(text, fontFamily, fontSize, fontWeight);

    public override void DrawLine(IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
    }

    public override void DrawPolygon(IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
    }

    public override void DrawImage(
        OxyImage source, double srcX, double srcY, double srcWidth, double srcHeight, double destX, double destY, double destWidth, double destHeight, double opacity, bool interpolate)
    {
    }

    protected override void ResetClip()
    {
    }

    protected override void SetClip(OxyRect clippingRectangle)
    {
    }
}
