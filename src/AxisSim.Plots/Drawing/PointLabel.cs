using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Drawing;

/// <summary>A label beside a marked point, on paper and within the plot, wrapped when it is long.</summary>
internal sealed class PointLabel : Annotation
{
    private const double Away = 16;
    private const double Inset = 6;
    private const double GreatestShare = 0.42;

    /// <summary>The point.</summary>
    public required DataPoint At { get; init; }

    /// <summary>Lines that it should not hide, in the units of the axes.</summary>
    public required IReadOnlyList<DataPoint> Edge { get; init; }

    /// <summary>The text.</summary>
    public required string Text { get; init; }

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        if (string.IsNullOrWhiteSpace(Text))
        {
            return;
        }

        OxyRect area = PlotModel.PlotArea;
        ScreenPoint at = Transform(At);
        double size = TextStyle.LegendSize, lineHeight = size * 1.35;
        IReadOnlyList<string> lines = TextStyle.Wrap(rc, Text, size, TextStyle.Bold, GreatestShare * area.Width);
        double width = lines.Max(line => rc.MeasureText(line, null, size, TextStyle.Bold).Width) + (2 * Inset);
        double height = (lines.Count * lineHeight) + Inset;
        (double left, double top) = Place(area, at, width, height);
        rc.DrawRectangle(new OxyRect(left, top, width, height), Palette.Paper, Palette.Frame, 1, EdgeRenderingMode.PreferGeometricAccuracy);
        for (int i = 0; i < lines.Count; i++)
        {
            rc.DrawText(
                new ScreenPoint(left + Inset, top + (0.5 * Inset) + ((i + 0.5) * lineHeight)), lines[i], Palette.Ink, null, size, TextStyle.Bold, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }
    }

    /// <summary>Above or below on either side: where it hides least of the edge, and first on the side with more room.</summary>
    private (double Left, double Top) Place(OxyRect area, ScreenPoint at, double width, double height)
    {
        ScreenPoint[] edge = [.. Edge.Where(p => p.IsDefined()).Select(p => Transform(p))];
        double right = at.X + Away, left = at.X - Away - width, above = at.Y - height - 2, below = at.Y + 2;
        double[] sides = at.X < 0.5 * (area.Left + area.Right) ? [right, left] : [left, right];
        (double Left, double Top) Clamped(double x, double y) =>
            (Math.Clamp(x, area.Left + 2, Math.Max(area.Left + 2, area.Right - width - 2)), Math.Clamp(y, area.Top + 2, Math.Max(area.Top + 2, area.Bottom - height - 2)));
        return new[] { (sides[0], above), (sides[0], below), (sides[1], above), (sides[1], below) }
            .Where(place => place.Item1 >= area.Left && place.Item1 + width <= area.Right)
            .Select(place => Clamped(place.Item1, place.Item2))
            .DefaultIfEmpty(Clamped(sides[0], above))
            .MinBy(place => edge.Count(p => p.X > place.Left - Inset && p.X < place.Left + width + Inset && p.Y > place.Top - Inset && p.Y < place.Top + height + Inset));
    }
}
