using System.Globalization;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Growth;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>How run time and memory grow with what is asked for, on logarithmic axes, each with the line of growth in proportion through its last point.</summary>
public static class GrowthFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="title">Title.</param>
    /// <param name="sentence">A sentence under the title; may be empty.</param>
    /// <param name="curves">The panels from above; at least one, each with a positive point.</param>
    /// <exception cref="ArgumentException">There is nothing to draw.</exception>
    public static IFigure Create(string title, string sentence, IReadOnlyList<GrowthCurve> curves)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(sentence);
        ArgumentNullException.ThrowIfNull(curves);
        if (curves.Count == 0 || curves.Any(curve => !curve.Points.Any(GrowthPanel.CanBeDrawn)))
        {
            throw new ArgumentException("Growth needs at least one panel, and each panel a point with positive figures: there is nothing to draw.", nameof(curves));
        }

        string description = (sentence.Length > 0 ? sentence + " " : "") + string.Join(" ", curves.Select(Words));
        return new Sheet(title, sentence, description, [.. curves.Select(GrowthPanel.Create)]);
    }

    private static string Words(GrowthCurve curve) =>
        $"{curve.Heading}: {curve.CostTitle} against {curve.SizeTitle}: {string.Join("; ", curve.Points.Where(GrowthPanel.CanBeDrawn).Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.Cost:G3} at {point.Size:G3}")))}.";
}
