using AxisSim.Plots.Drawing;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace AxisSim.Plots;

/// <summary>Writes figures as PNG, SVG or PDF. The same figure gives the same bytes at every run and under every culture.</summary>
public static class FigureWriter
{
    /// <summary>Pictures are mostly white: this deflate level costs a third of the time of the default for a few per cent of size.</summary>
    private const int PngDeflateLevel = 4;

    private const float PointsPerPixel = 72f / 96f;

    /// <summary>A fixed date: the time of writing would make every file differ from the one before.</summary>
    private static readonly DateTime s_undated = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Writes a PNG picture.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="stream">Where to write.</param>
    /// <param name="scale">Pixels per figure pixel, 0.1 to 8: 1 for a screen at 96 per inch, 2 for print and dense screens.</param>
    public static void WritePng(IFigure figure, Stream stream, double scale = 1.0)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(stream);
        if (!(scale is >= 0.1 and <= 8.0))
        {
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "The scale of a picture must be between 0.1 and 8.");
        }

        SKImageInfo info = new(
            (int)Math.Ceiling(figure.Width * scale), (int)Math.Ceiling(figure.Height * scale), SKColorType.Rgba8888, SKAlphaType.Opaque);
        using SKBitmap bitmap = new(info);
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.White);
        Draw(figure, canvas, RenderTarget.PixelGraphic, (float)scale);
        canvas.Flush();
        using SKPixmap pixels = bitmap.PeekPixels();
        using SKData data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, PngDeflateLevel))
            ?? throw new InvalidOperationException("The picture could not be encoded as PNG.");
        data.SaveTo(stream);
    }

    /// <summary>Writes an SVG drawing: text stays text.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="stream">Where to write.</param>
    public static void WriteSvg(IFigure figure, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(stream);
        SvgDocument.Write(figure, stream);
    }

    /// <summary>Writes a PDF of one page with the font inside.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="stream">Where to write.</param>
    public static void WritePdf(IFigure figure, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(figure);
        WritePdf([figure], stream);
    }

    /// <summary>Writes a PDF of a page for each figure, under the title of the first, with the font inside.</summary>
    /// <param name="pages">The figures; at least one.</param>
    /// <param name="stream">Where to write.</param>
    public static void WritePdf(IReadOnlyList<IFigure> pages, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(pages);
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentOutOfRangeException.ThrowIfZero(pages.Count);
        SKDocumentPdfMetadata metadata = SKDocumentPdfMetadata.Default;
        metadata.Title = pages[0].Title;
        metadata.Subject = string.Join(' ', pages.Select(page => page.Description));
        metadata.Creation = s_undated;
        metadata.Modified = s_undated;
        using MemoryStream made = new();
        using (SKDocument document = SKDocument.CreatePdf(made, metadata))
        {
            foreach (IFigure page in pages)
            {
                SKCanvas canvas = document.BeginPage((float)page.Width * PointsPerPixel, (float)page.Height * PointsPerPixel);
                Draw(page, canvas, RenderTarget.VectorGraphic, PointsPerPixel);
                document.EndPage();
            }

            document.Close();
        }

        made.Position = 0;
        made.CopyTo(stream);
    }

    private static void Draw(IFigure figure, SKCanvas canvas, RenderTarget target, float scale)
    {
        using InterRenderContext context = new() { SkCanvas = canvas, RenderTarget = target, DpiScale = scale };
        figure.Draw(context);
    }
}
