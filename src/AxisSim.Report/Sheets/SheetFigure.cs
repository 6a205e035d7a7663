using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Report.Sheets;

/// <summary>Which side of the paper.</summary>
internal enum SheetSide
{
    /// <summary>What to enter.</summary>
    Numbers,

    /// <summary>What to check, and the first power-on.</summary>
    PowerOn,
}

/// <summary>One side of a settings sheet, a page of A4, black on white.</summary>
/// <remarks>The text is as large as fits on the page: what a mount has less of is printed larger.</remarks>
internal sealed class SheetFigure(SettingsSheet sheet, SheetSide side) : IFigure
{
    /// <summary>A4 is 210 mm by 297 mm; a pixel is 1/96 inch.</summary>
    private const double PixelsPerMillimetre = 96.0 / 25.4;

    private const double Margin = 10.0 * PixelsPerMillimetre;

    /// <summary>Sizes tried, px: 9 pt first; below 5 pt nobody reads it in the field.</summary>
    private const double LargestText = 12.0, SmallestText = 6.7, Grade = 0.1;

    /// <inheritdoc/>
    public string Title => sheet.Title;

    /// <summary>Both sides, in their order.</summary>
    public static IReadOnlyList<SheetFigure> Both(SettingsSheet sheet) => [new(sheet, SheetSide.Numbers), new(sheet, SheetSide.PowerOn)];

    /// <inheritdoc/>
    public string Description => $"{sheet.Warning}{(sheet.Warning is null ? "" : " ")}{sheet.Verdict} {(side == SheetSide.Numbers ? "Numbers to enter." : "What to check first, and the sequence of the first power-on with the values expected.")}";

    /// <inheritdoc/>
    public double Width => 210.0 * PixelsPerMillimetre;

    /// <inheritdoc/>
    public double Height => 297.0 * PixelsPerMillimetre;

    /// <summary>Size of the text on the page, px.</summary>
    public double TextSize(IRenderContext context)
    {
        for (int grade = 0; ; grade++)
        {
            double size = LargestText - (grade * Grade);
            if (size < SmallestText)
            {
                throw new InvalidOperationException("the settings sheet does not fit on its paper");
            }

            if (Layout().Set(new SheetPen(context, size, draws: false)) <= Height - (2.0 * Margin))
            {
                return size;
            }
        }
    }

    /// <inheritdoc/>
    public void Draw(IRenderContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        double size = TextSize(context);
        context.DrawRectangle(new OxyRect(0, 0, Width, Height), Palette.Paper, OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        Layout().Set(new SheetPen(context, size, draws: true));
    }

    private SheetLayout Layout() => new(sheet, side, Margin, Margin, Width - (2.0 * Margin));
}
