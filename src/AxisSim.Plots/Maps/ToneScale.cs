using AxisSim.Plots.Drawing;
using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Maps;

/// <summary>The scale of tones to the right of a map, with labels and unit.</summary>
internal sealed class ToneScale : Annotation
{
    private const double Gap = 22;
    private const double BarWidth = 24;
    private const double TickLength = 5;
    private const double TitleFromRight = 16;
    private const int Pixels = 512;

    /// <summary>Values at the ends.</summary>
    public required Span Range { get; init; }

    /// <summary>Name and unit.</summary>
    public required string Title { get; init; }

    /// <summary>It stands outside the plot area, to which annotations are cut otherwise.</summary>
    public override OxyRect GetClippingRect()
    {
        OxyRect area = PlotModel.PlotArea;
        return new OxyRect(area.Right, area.Top - TextStyle.TickSize, Sheet.SheetWidth - area.Right, area.Height + (2 * TextStyle.TickSize));
    }

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        OxyRect bar = new(area.Right + Gap, area.Top, BarWidth, area.Height);
        rc.DrawImage(Raster.Make(1, Pixels, (_, y) => Palette.Tone(1.0 - ((y + 0.5) / Pixels))), 0, 0, 1, Pixels, bar.Left, bar.Top, bar.Width, bar.Height, 1.0, false);
        rc.DrawRectangle(bar, OxyColors.Undefined, Palette.Frame, 1, EdgeRenderingMode.PreferGeometricAccuracy);
        foreach (double value in Ticks.Linear(Range.From, Range.To, 8))
        {
            double y = bar.Bottom - ((value - Range.From) / Range.Length * bar.Height);
            rc.DrawLine([new ScreenPoint(bar.Right, y), new ScreenPoint(bar.Right + TickLength, y)], Palette.Frame, 1, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Bevel);
            rc.DrawText(
                new ScreenPoint(bar.Right + TickLength + 4, y), Panel.Label(value), Palette.Ink, null, TextStyle.TickSize, TextStyle.Regular, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }

        (string title, double size) = AxisTitle.Fit(Title, area.Height);
        rc.DrawText(
            new ScreenPoint(Sheet.SheetWidth - TitleFromRight, 0.5 * (area.Top + area.Bottom)), title, Palette.Ink, null, size, TextStyle.Regular, -90, HorizontalAlignment.Center, VerticalAlignment.Middle);
    }
}
