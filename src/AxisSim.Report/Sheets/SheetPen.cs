using System.Text.RegularExpressions;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Report.Sheets;

/// <summary>Sets text on a sheet: measures first, draws when told to, so that the size that fits is known before anything is drawn.</summary>
/// <param name="context">Measures, and draws when <paramref name="draws"/>.</param>
/// <param name="size">Size of the text, px.</param>
/// <param name="draws">Whether to draw.</param>
internal sealed partial class SheetPen(IRenderContext context, double size, bool draws)
{
    private const double LineOverSize = 1.26;

    /// <summary>Size of the text, px.</summary>
    public double Size => size;

    /// <summary>Height of a line, px.</summary>
    public double LineHeight => size * LineOverSize;

    /// <summary>Sets wrapped text from a top left corner and gives its height.</summary>
    public double Text(string text, double x, double y, double width, bool bold = false, double scale = 1.0, OxyColor? colour = null)
    {
        double height = 0.0, weight = bold ? TextStyle.Bold : TextStyle.Regular;
        foreach (string line in Lines(text, size * scale, weight, width))
        {
            if (draws)
            {
                context.DrawText(new ScreenPoint(x, y + height), line, colour ?? Palette.Ink, null, size * scale, weight);
            }

            height += LineHeight * scale;
        }

        return height;
    }

    /// <summary>Height of wrapped text that is not set yet.</summary>
    public double Height(string text, double width, bool bold, double scale) =>
        Lines(text, size * scale, bold ? TextStyle.Bold : TextStyle.Regular, width).Count() * LineHeight * scale;

    /// <summary>Sets a row of cells, each wrapped into its column, and gives the height of the tallest.</summary>
    public double Row(double y, params ReadOnlySpan<(string Text, double X, double Width, bool Bold)> cells)
    {
        double height = 0.0;
        foreach ((string text, double x, double width, bool bold) in cells)
        {
            height = Math.Max(height, text.Length == 0 ? 0.0 : Text(text, x, y, width, bold));
        }

        return height;
    }

    // A word that is wider than its column, such as the fraction of many odd teeth, goes on in the next line rather than over its neighbour.
    private IEnumerable<string> Lines(string text, double textSize, double weight, double width)
    {
        foreach (string line in TextStyle.Wrap(context, Together(text), textSize, weight, width))
        {
            string rest = line;
            while (rest.Length > 1 && context.MeasureText(rest, null, textSize, weight).Width > width)
            {
                int fits = rest.Length - 1;
                while (fits > 1 && context.MeasureText(rest[..fits], null, textSize, weight).Width > width)
                {
                    fits--;
                }

                yield return rest[..fits];
                rest = rest[fits..];
            }

            yield return rest;
        }
    }

    // "11.2 V" and "45 N m" must not be torn apart at the end of a line.
    private static string Together(string text) => NumberAndUnit().Replace(text, "\u00a0");

    [GeneratedRegex(@"(?<=[0-9]) (?=[A-Za-z%])|(?<=\bN) (?=m\b)", RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();

    /// <summary>A level line.</summary>
    public void Rule(double x, double y, double width, OxyColor colour, double thickness = 0.7)
    {
        if (draws)
        {
            context.DrawLine([new ScreenPoint(x, y), new ScreenPoint(x + width, y)], colour, thickness, EdgeRenderingMode.Automatic, null, LineJoin.Miter);
        }
    }

    /// <summary>An open box.</summary>
    public void Box(double x, double y, double width, double height, OxyColor fill, OxyColor stroke, double thickness = 0.7)
    {
        if (draws)
        {
            context.DrawRectangle(new OxyRect(x, y, width, height), fill, stroke, thickness, EdgeRenderingMode.Automatic);
        }
    }
}
