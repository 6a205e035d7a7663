namespace AxisSim.Plots.Drawing;

/// <summary>Ranges and size of one plot area.</summary>
/// <param name="X">Range of the horizontal axis.</param>
/// <param name="Y">Range of the vertical axis.</param>
/// <param name="WidthPixels">Width of the plot area.</param>
/// <param name="HeightPixels">Height of the plot area.</param>
internal sealed record PlotFrame(Span X, Span Y, double WidthPixels, double HeightPixels)
{
    /// <summary>Pixels per unit of the horizontal axis.</summary>
    public double PixelsPerX => WidthPixels / X.Length;

    /// <summary>Pixels per unit of the vertical axis.</summary>
    public double PixelsPerY => HeightPixels / Y.Length;
}
