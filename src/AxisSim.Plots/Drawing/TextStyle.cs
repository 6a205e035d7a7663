using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>Sizes of text, px, and text over several lines.</summary>
internal static class TextStyle
{
    public const double TitleSize = 25;
    public const double VerdictSize = 18;
    public const double PanelTitleSize = 17;
    public const double LegendSize = 15;
    public const double AxisSize = 16;
    public const double TickSize = 15;
    public const double Regular = 400;
    public const double Bold = 700;

    /// <summary>Breaks a text at its spaces so that no line is wider than the limit (a word that is too long alone stays whole).</summary>
    public static IReadOnlyList<string> Wrap(IRenderContext context, string text, double size, double weight, double width)
    {
        List<string> lines = [];
        foreach (string paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            string line = string.Empty;
            foreach (string word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                string longer = line.Length == 0 ? word : line + " " + word;
                if (line.Length > 0 && context.MeasureText(longer, null, size, weight).Width > width)
                {
                    lines.Add(line);
                    longer = word;
                }

                line = longer;
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Draws wrapped text and gives the height that it took.</summary>
    public static double Draw(IRenderContext context, string text, ScreenPoint topLeft, double size, double weight, double width, OxyColor colour)
    {
        double y = topLeft.Y;
        foreach (string line in Wrap(context, text, size, weight, width))
        {
            context.DrawText(new ScreenPoint(topLeft.X, y), line, colour, null, size, weight);
            y += size * 1.35;
        }

        return y - topLeft.Y;
    }
}
