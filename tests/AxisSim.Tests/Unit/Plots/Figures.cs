using AxisSim.Core.Outcomes;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Tests.Invented;
using AxisSim.Tests.Unit.Core.Comparisons;
using SkiaSharp;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>The sample moves as figures, and figures as bytes.</summary>
internal static class Figures
{
    public const string Title = "Harrow Fell Observatory: polar axis, 90\u00b0 slew";
    public const string Verdict = "Arrives and settles within 2 arcsec.";

    public static readonly string[] Names = ["good", "stalled", "tracking", "curves", "map", "map-outcomes", "envelope", "growth", "reduction", "comparison", "measured", "front", "balance"];

    public static IFigure Make(string name, string title = Title) => name switch
    {
        "good" => Sheet(SampleMoves.Good(), title),
        "stalled" => Sheet(SampleMoves.Stalled(), title),
        "tracking" => Sheet(SampleMoves.Tracking(), title),
        "curves" => TorqueSpeedFigure.Create(SampleMoves.Curves(), title, SampleMoves.TotalRatio, Verdict),
        "map" => MapFigure.Create(SampleMaps.Margin(40, 30) with { Title = title }),
        "map-outcomes" => MapFigure.Create(SampleMaps.EveryKind() with { Title = title }),
        "envelope" => EnvelopeFigure.Create(SampleEnvelopes.Three() with { Title = title }),
        "balance" => BalanceFigure.Create(SampleBalances.Both() with { Title = title }),
        "front" => FrontFigure.Create(SampleFronts.Three() with { Title = title }),
        "growth" => GrowthFigure.Create(title, "Run time grows in proportion; memory does not.", SampleEnvelopes.Growth()),
        "comparison" => ComparisonFigure.Create(title, "The best one.", SampleComparisons.Curves(5), "what 1.3 times the load needs of the first"),
        "measured" => MeasuredFigure.Create(SampleComparisons.Fit(12), SampleMotors.Of("17 long, 0.9 deg").Motor, title, "Least squares."),
        "reduction" => ReductionFigure.Create(SampleReductions.Picture(SampleReductions.Several()) with { Title = title }),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such sample"),
    };

    public static IFigure Sheet((Trace Trace, AxisOutcome Outcome) move, string title = Title) => MoveSheet.Create(move.Trace, move.Outcome, title, Verdict);

    public static byte[] Png(IFigure figure, double scale = 1.0) => Bytes(stream => FigureWriter.WritePng(figure, stream, scale));

    public static byte[] Svg(IFigure figure) => Bytes(stream => FigureWriter.WriteSvg(figure, stream));

    public static byte[] Pdf(IFigure figure) => Bytes(stream => FigureWriter.WritePdf(figure, stream));

    /// <summary>Pixels of a part of a picture that are darker than a mid grey.</summary>
    public static int Ink(byte[] png, SKRectI area)
    {
        using SKBitmap bitmap = SKBitmap.Decode(png);
        int ink = 0;
        for (int y = area.Top; y < Math.Min(area.Bottom, bitmap.Height); y++)
        {
            for (int x = area.Left; x < Math.Min(area.Right, bitmap.Width); x++)
            {
                SKColor pixel = bitmap.GetPixel(x, y);
                ink += pixel.Red + pixel.Green + pixel.Blue < 3 * 128 ? 1 : 0;
            }
        }

        return ink;
    }

    private static byte[] Bytes(Action<Stream> write)
    {
        using MemoryStream stream = new();
        write(stream);
        return stream.ToArray();
    }
}
