using OxyPlot;
using SkiaSharp;

namespace AxisSim.Plots.Drawing;

/// <summary>Pictures made pixel by pixel, for what would take too many rectangles.</summary>
internal static class Raster
{
    private const int DeflateLevel = 6;

    /// <summary>A picture; the first row is the topmost.</summary>
    public static OxyImage Make(int width, int height, Func<int, int, OxyColor> colour)
    {
        byte[] pixels = new byte[4 * width * height];
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
            {
                OxyColor c = colour(x, y);
                int at = 4 * ((y * width) + x);
                (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (c.R, c.G, c.B, byte.MaxValue);
            }
        }

        using SKImage image = SKImage.FromPixelCopy(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque), pixels);
        using SKPixmap pixmap = image.PeekPixels();
        // Rows repeat: the filter against the row above makes most of them zeros.
        using SKData data = pixmap.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Up, DeflateLevel)) ?? throw new InvalidOperationException("The picture could not be encoded as PNG.");
        return new OxyImage(data.ToArray());
    }
}
