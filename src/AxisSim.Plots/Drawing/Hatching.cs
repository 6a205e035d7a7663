using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Drawing;

/// <summary>Kinds of lines that tell areas apart without colour.</summary>
internal enum Pattern
{
    /// <summary>No lines.</summary>
    None,

    /// <summary>Diagonals that rise to the right.</summary>
    Rising,

    /// <summary>Diagonals that fall to the right.</summary>
    Falling,

    /// <summary>Both diagonals.</summary>
    Crossed,

    /// <summary>Level lines.</summary>
    Level,

    /// <summary>Upright lines.</summary>
    Upright,

    /// <summary>Level and upright lines.</summary>
    Squared,
}

/// <summary>Hatching: an area that reads in grey and does not hide what lies under it.</summary>
internal static class Hatching
{
    private const double Spacing = 9;
    private const double StepPixels = 0.5;
    private const double Width = 0.9;

    /// <summary>Hatches a rectangle of the canvas with rising diagonals.</summary>
    public static void Draw(IRenderContext context, OxyRect box, OxyColor colour) => Draw(context, colour, [.. Family(box, 1, 1)]);

    /// <summary>Hatches a rectangle in the pattern of a look, where <paramref name="inside"/> holds; everywhere when it is null.</summary>
    public static void Draw(IRenderContext context, OxyRect box, Look look, Func<double, double, bool>? inside)
    {
        List<ScreenPoint> ends = [];
        foreach ((int a, int b) in Directions(look.Pattern))
        {
            List<ScreenPoint> lines = [.. Family(box, a, b)];
            for (int i = 0; i < lines.Count; i += 2)
            {
                Cut(lines[i], lines[i + 1], inside, ends);
            }
        }

        Draw(context, look.Colour, ends);
    }

    private static void Draw(IRenderContext context, OxyColor colour, List<ScreenPoint> ends) =>
        context.DrawLineSegments(ends, colour, Width, EdgeRenderingMode.PreferGeometricAccuracy);

    /// <summary>The lines a x + b y = c of a pattern.</summary>
    private static (int A, int B)[] Directions(Pattern pattern) => pattern switch
    {
        Pattern.Rising => [(1, 1)],
        Pattern.Falling => [(1, -1)],
        Pattern.Crossed => [(1, 1), (1, -1)],
        Pattern.Level => [(0, 1)],
        Pattern.Upright => [(1, 0)],
        Pattern.Squared => [(0, 1), (1, 0)],
        _ => [],
    };

    /// <summary>Ends of the lines a x + b y = c within a box, two by two; anchored to the canvas, so that neighbouring areas share one pattern.</summary>
    private static IEnumerable<ScreenPoint> Family(OxyRect box, int a, int b)
    {
        double[] corners = [(a * box.Left) + (b * box.Top), (a * box.Right) + (b * box.Top), (a * box.Left) + (b * box.Bottom), (a * box.Right) + (b * box.Bottom)];
        for (double c = Math.Ceiling(corners.Min() / Spacing) * Spacing; c < corners.Max(); c += Spacing)
        {
            if (b == 0)
            {
                yield return new ScreenPoint(c, box.Top);
                yield return new ScreenPoint(c, box.Bottom);
                continue;
            }

            // y = (c - a x) / b, and b is 1 or -1.
            double left = box.Left, right = box.Right;
            if (a != 0)
            {
                double atTop = c - (b * box.Top), atBottom = c - (b * box.Bottom);
                left = Math.Max(left, Math.Min(atTop, atBottom));
                right = Math.Min(right, Math.Max(atTop, atBottom));
            }

            if (right > left)
            {
                yield return new ScreenPoint(left, (c - (a * left)) * b);
                yield return new ScreenPoint(right, (c - (a * right)) * b);
            }
        }
    }

    /// <summary>Keeps of a line what is inside.</summary>
    private static void Cut(ScreenPoint from, ScreenPoint to, Func<double, double, bool>? inside, List<ScreenPoint> ends)
    {
        if (inside is null)
        {
            ends.AddRange([from, to]);
            return;
        }

        int steps = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / StepPixels));
        int start = -1;
        for (int i = 0; i <= steps; i++)
        {
            ScreenPoint middle = from + ((to - from) * ((i + 0.5) / steps));
            bool here = i < steps && inside(middle.X, middle.Y);
            if (here && start < 0)
            {
                start = i;
            }
            else if (!here && start >= 0)
            {
                ends.Add(from + ((to - from) * ((double)start / steps)));
                ends.Add(from + ((to - from) * ((double)i / steps)));
                start = -1;
            }
        }
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
