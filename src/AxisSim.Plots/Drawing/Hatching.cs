using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Drawing;

/// <summary>Diagonal hatching: a band that reads in grey and does not hide what lies under it.</summary>
internal static class Hatching
{
    private const double Spacing = 9;

    /// <summary>Hatches a rectangle of the canvas.</summary>
    public static void Draw(IRenderContext context, OxyRect box, OxyColor colour)
    {
        List<ScreenPoint> ends = [];
        // Lines x + y = c: anchored to the canvas, so that neighbouring bands share one pattern.
        for (double c = Math.Ceiling((box.Left + box.Top) / Spacing) * Spacing; c < box.Right + box.Bottom; c += Spacing)
        {
            double top = Math.Max(box.Top, c - box.Right);
            double bottom = Math.Min(box.Bottom, c - box.Left);
            if (bottom > top)
            {
                ends.Add(new ScreenPoint(c - top, top));
                ends.Add(new ScreenPoint(c - bottom, bottom));
            }
        }

        context.DrawLineSegments(ends, colour, 0.9, EdgeRenderingMode.PreferGeometricAccuracy);
    }
}

/// <summary>A hatched band between two values of the horizontal axis.</summary>
internal sealed class HatchedBand : Annotation
{
    /// <summary>From where, in the unit of the axis.</summary>
    public required double From { get; init; }

    /// <summary>To where, in the unit of the axis.</summary>
    public required double To { get; init; }

    /// <summary>Colour of the lines.</summary>
    public required OxyColor Colour { get; init; }

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        double left = Math.Clamp(Transform(new DataPoint(From, 0)).X, area.Left, area.Right);
        double right = Math.Clamp(Transform(new DataPoint(To, 0)).X, area.Left, area.Right);
        if (right > left)
        {
            Hatching.Draw(rc, new OxyRect(left, area.Top, right - left, area.Height), Colour);
        }
    }
}
