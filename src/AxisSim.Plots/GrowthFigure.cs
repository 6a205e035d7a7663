using System.Globalization;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Growth;

namespace AxisSim.Plots;

/// <summary>A measured point: how much was asked for, and what it cost.</summary>
/// <param name="Size">What was asked for.</param>
/// <param name="Cost">What it cost.</param>
public sealed record GrowthPoint(double Size, double Cost);

/// <summary>One panel of growth.</summary>
/// <param name="Heading">Heading: "Run time of a map".</param>
/// <param name="SizeTitle">Title of the horizontal axis, with its unit: "Cells, 1".</param>
/// <param name="CostTitle">Title of the vertical axis, with its unit: "Run time, s".</param>
/// <param name="Points">Measured points; those that are not positive cannot be on logarithmic axes and are left out.</param>
public sealed record GrowthCurve(string Heading, string SizeTitle, string CostTitle, IReadOnlyList<GrowthPoint> Points);

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
