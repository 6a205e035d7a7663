using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>A title, a sentence under it, and panels one below the other.</summary>
internal sealed class Sheet : IFigure
{
    public const double SheetWidth = 1200;
    public const double PlotWidth = SheetWidth - Panel.LeftMargin - Panel.RightMargin;

    private const double TopMargin = 20;
    private const double SideMargin = 24;

    /// <summary>Share of the width that lines of title and sentence may take: a viewer of an SVG may set them in a wider font than the one measured.</summary>
    public const double TextShare = 0.86;

    private const double HeadingHeight = 28;
    private const double BetweenPanels = 4;

    private readonly string _sentence;
    private readonly IReadOnlyList<Panel> _panels;

    /// <summary>Lays the sheet out.</summary>
    public Sheet(string title, string sentence, string description, IReadOnlyList<Panel> panels)
    {
        Title = title;
        Description = description;
        _sentence = sentence;
        _panels = panels;
        using InterRenderContext measurer = new();
        Height = Math.Ceiling(Lay(measurer, false));
    }

    /// <inheritdoc/>
    public string Title { get; }

    /// <inheritdoc/>
    public string Description { get; }

    /// <inheritdoc/>
    public double Width => SheetWidth;

    /// <inheritdoc/>
    public double Height { get; }

    /// <inheritdoc/>
    public void Draw(IRenderContext context) => Lay(context, true);

    private double Lay(IRenderContext context, bool draw)
    {
        double y = TopMargin;
        y += Text(Title, TextStyle.TitleSize, TextStyle.Bold, Palette.Ink);
        y += Text(_sentence, TextStyle.VerdictSize, TextStyle.Regular, Palette.Ink);
        y += 8;
        foreach (Panel panel in _panels)
        {
            y += Head(context, panel, y, draw);
            if (draw)
            {
                Panel.Render(context, panel.Model, new OxyRect(0, y, SheetWidth, panel.ModelHeight));
            }

            y += panel.ModelHeight + BetweenPanels;
        }

        return y;

        double Text(string text, double size, double weight, OxyColor colour)
        {
            double width = TextShare * (SheetWidth - (2 * SideMargin));
            return string.IsNullOrWhiteSpace(text) ? 0
                : draw ? TextStyle.Draw(context, text, new ScreenPoint(SideMargin, y), size, weight, width, colour)
                : TextStyle.Wrap(context, text, size, weight, width).Count * size * 1.35;
        }
    }

    /// <summary>Heading to the left; the legend to the right of it, or on lines of its own when it does not fit.</summary>
    private static double Head(IRenderContext context, Panel panel, double y, bool draw)
    {
        double headingWidth = context.MeasureText(panel.Heading, null, TextStyle.PanelTitleSize, TextStyle.Bold).Width;
        double left = Panel.LeftMargin + headingWidth + 30;
        double right = SheetWidth - Panel.RightMargin;
        bool beside = panel.Legend.Count == 0 || Legend.Rows(context, panel.Legend, right - left) == 1;
        int rows = beside ? 0 : Legend.Rows(context, panel.Legend, PlotWidth);
        if (draw)
        {
            context.DrawText(
                new ScreenPoint(Panel.LeftMargin, y + (HeadingHeight / 2)), panel.Heading, Palette.Ink, null, TextStyle.PanelTitleSize, TextStyle.Bold, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
            OxyRect area = beside
                ? new OxyRect(left, y + ((HeadingHeight - Legend.RowHeight) / 2), right - left, Legend.RowHeight)
                : new OxyRect(Panel.LeftMargin, y + HeadingHeight, PlotWidth, rows * Legend.RowHeight);
            Legend.Draw(context, panel.Legend, area, beside);
        }

        return HeadingHeight + (rows * Legend.RowHeight);
    }
}
