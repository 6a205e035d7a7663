using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>One entry of a legend.</summary>
internal sealed record LegendEntry(string Text, Look Look);

/// <summary>A legend in rows outside the plot area, so that it never covers data.</summary>
internal static class Legend
{
    public const double RowHeight = 24;
    private const double SwatchWidth = 42;
    private const double Gap = 8;
    private const double Between = 24;

    /// <summary>Rows that the entries need in a width.</summary>
    public static int Rows(IRenderContext context, IReadOnlyList<LegendEntry> entries, double width) => Flow(context, entries, width).Count;

    /// <summary>Draws the rows, each flush right or left.</summary>
    public static void Draw(IRenderContext context, IReadOnlyList<LegendEntry> entries, OxyRect area, bool flushRight)
    {
        double y = area.Top + (RowHeight / 2);
        foreach (List<(LegendEntry Entry, double Width)> row in Flow(context, entries, area.Width))
        {
            double x = flushRight ? area.Right - row.Sum(item => item.Width + Between) + Between : area.Left;
            foreach ((LegendEntry entry, double width) in row)
            {
                DrawSwatch(context, entry.Look, x, y);
                context.DrawText(
                    new ScreenPoint(x + SwatchWidth + Gap, y), entry.Text, Palette.Ink, null, TextStyle.LegendSize, TextStyle.Regular, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
                x += width + Between;
            }

            y += RowHeight;
        }
    }

    private static List<List<(LegendEntry Entry, double Width)>> Flow(IRenderContext context, IReadOnlyList<LegendEntry> entries, double width)
    {
        double[] needs = [.. entries.Select(e => SwatchWidth + Gap + context.MeasureText(e.Text, null, TextStyle.LegendSize, TextStyle.Regular).Width)];
        if (needs.Sum() + (Between * (needs.Length - 1)) <= width)
        {
            return [[.. entries.Zip(needs)]];
        }

        // More than a row: columns of one width, read row by row.
        int columns = Math.Max(1, (int)((width + Between) / (needs.Max() + Between)));
        double column = ((width + Between) / columns) - Between;
        return [.. entries.Chunk(columns).Select(row => row.Select(entry => (entry, column)).ToList())];
    }

    private static void DrawSwatch(IRenderContext context, Look look, double x, double y)
    {
        double right = x + SwatchWidth;
        double middle = x + (SwatchWidth / 2);
        OxyRect box = new(x, y - 7, SwatchWidth, 14);
        switch (look.Swatch)
        {
            case Swatch.Band:
                context.DrawRectangle(box, look.Colour, Palette.Frame, 0.8, EdgeRenderingMode.PreferGeometricAccuracy);
                break;
            case Swatch.Hatch:
                Hatching.Draw(context, box, look.Colour);
                context.DrawRectangle(box, OxyColors.Undefined, look.Colour, 0.8, EdgeRenderingMode.PreferGeometricAccuracy);
                break;
            case Swatch.Upright:
                context.DrawLine(
                    [new ScreenPoint(middle, y - 11), new ScreenPoint(middle, y + 11)], look.Colour, look.Width, EdgeRenderingMode.PreferGeometricAccuracy, Marks.ShortDashArray(look), LineJoin.Bevel);
                break;
            case Swatch.Cell:
                context.DrawRectangle(box, look.Fill, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
                Hatching.Draw(context, box, look, null);
                context.DrawRectangle(box, OxyColors.Undefined, look.Colour, 0.8, EdgeRenderingMode.PreferGeometricAccuracy);
                break;
            case Swatch.Marker:
                DrawMarker(context, look, new ScreenPoint(middle, y));
                break;
            default:
                Line(context, look, new ScreenPoint(x, y), new ScreenPoint(right, y));
                if (look.Marker != MarkerType.None)
                {
                    DrawMarker(context, look, new ScreenPoint(middle, y));
                }

                break;
        }
    }

    private static void DrawMarker(IRenderContext context, Look look, ScreenPoint at) => context.DrawMarker(
        at,
        look.Marker,
        null,
        look.MarkerSize,
        look.Hollow ? Palette.Paper : look.Colour,
        look.Colour,
        Marks.MarkerStroke,
        EdgeRenderingMode.PreferGeometricAccuracy);

    private static void Line(IRenderContext context, Look look, ScreenPoint from, ScreenPoint to) => context.DrawLine(
        [from, to], look.Colour, look.Width, EdgeRenderingMode.PreferGeometricAccuracy, Marks.DashArray(look), LineJoin.Bevel);
}
