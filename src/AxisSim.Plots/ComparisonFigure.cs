using System.Globalization;
using AxisSim.Core.Comparisons;
using AxisSim.Plots.Comparisons;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>Torque that candidates can give against the rate of the axis, with what the move needs of the first of them.</summary>
public static class ComparisonFigure
{
    /// <summary>As many candidates as can be told apart by dash and mark.</summary>
    public static int Most => Looks.Envelopes.Count;

    /// <summary>Makes the figure.</summary>
    /// <param name="title">Title.</param>
    /// <param name="sentence">A sentence under the title; may be empty.</param>
    /// <param name="curves">The candidates, the best first; more than <see cref="Most"/> share looks by turns.</param>
    /// <param name="needLabel">What the path of the first candidate's need is called.</param>
    /// <exception cref="ArgumentException">There is nothing to draw.</exception>
    public static IFigure Create(string title, string sentence, IReadOnlyList<ComparisonCurve> curves, string needLabel)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(sentence);
        ArgumentNullException.ThrowIfNull(curves);
        ArgumentNullException.ThrowIfNull(needLabel);
        if (!curves.Any(curve => curve.Curve.ClosedForm.Any(ComparisonPanel.CanBeDrawn)))
        {
            throw new ArgumentException("A comparison without a curve has nothing to draw.", nameof(curves));
        }

        string description = (sentence.Length > 0 ? sentence + " " : "") + "Torque at the motor shaft times the total reduction in N m against the rate of the axis in deg/s. " + string.Join(" ", curves.Select(Words));
        return new Sheet(title, sentence, description, [ComparisonPanel.Create(curves, needLabel)]);
    }

    private static string Words(ComparisonCurve curve) => curve.Curve.Safe is { } safe
        ? string.Create(CultureInfo.InvariantCulture, $"{curve.Label}: safe up to {safe.RateRadiansPerSecond * AngleUnit.DegreesPerRadian:G4} deg/s.")
        : $"{curve.Label}: no safe rate.";
}
