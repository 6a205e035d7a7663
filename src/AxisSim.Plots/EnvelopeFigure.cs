using System.Globalization;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Envelopes;
using AxisSim.Plots.Pictures;

namespace AxisSim.Plots;

/// <summary>The greatest safe slew rate against the ramp, one curve per value of a key.</summary>
public static class EnvelopeFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="picture">Curves, point and bound.</param>
    /// <exception cref="ArgumentException">There is no point at all, or a ramp cannot be on its axis.</exception>
    public static IFigure Create(EnvelopePicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        double[] ramps = [.. picture.Curves.SelectMany(curve => curve.Points).Select(point => point.RampSeconds)];
        if (ramps.Length == 0)
        {
            throw new ArgumentException("An envelope without a point has nothing to draw.", nameof(picture));
        }

        if (ramps.Any(ramp => !double.IsFinite(ramp) || (picture.LogarithmicRamps && ramp <= 0.0)))
        {
            throw new ArgumentException("The ramps of an envelope must be finite, and positive on a logarithmic axis.", nameof(picture));
        }

        string description = (picture.Sentence.Length > 0 ? picture.Sentence + " " : "") + "Greatest slew rate in deg/s against ramp time in s. " + string.Join(" ", picture.Curves.Select(Words));
        return new Sheet(picture.Title, picture.Sentence, description, [EnvelopePanel.Create(picture)]);
    }

    private static string Words(EnvelopeCurve curve) =>
        $"{curve.Label}: {string.Join(", ", curve.Points.Select(point => double.IsFinite(point.RateRadiansPerSecond) ? $"{Number(point.RateRadiansPerSecond * AngleUnit.DegreesPerRadian)} at {Number(point.RampSeconds)} s" : $"none at {Number(point.RampSeconds)} s"))}.";

    private static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
