using System.Globalization;
using AxisSim.Core.Reductions;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Plots.Reductions;

namespace AxisSim.Plots;

/// <summary>Rate, acceleration, torque and resolution against the total reduction, all on logarithmic axes, with the scenario's own and the inertia-matched one marked.</summary>
public static class ReductionFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="picture">Points and marks.</param>
    /// <exception cref="ArgumentException">There is no point, or a reduction that cannot be on a logarithmic axis.</exception>
    public static IFigure Create(ReductionPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        IReadOnlyList<ReductionPoint> points = picture.Result.Points;
        if (points.Count == 0)
        {
            throw new ArgumentException("A lesson without a reduction has nothing to draw.", nameof(picture));
        }

        if (points.Any(point => !(point.Facts.TotalReduction > 0.0) || !double.IsFinite(point.Facts.TotalReduction)))
        {
            throw new ArgumentException("The reductions must be finite and positive.", nameof(picture));
        }

        string description = (picture.Sentence.Length > 0 ? picture.Sentence + " " : "")
            + "Greatest rate, greatest acceleration, torque at the axis, and resolution against the total reduction. " + string.Join(" ", points.Select(Words));
        return new Sheet(picture.Title, picture.Sentence, description, ReductionPanels.Create(picture));
    }

    private static string Words(ReductionPoint point) => string.Create(
        CultureInfo.InvariantCulture,
        $"At {point.Facts.TotalReduction:G4}: {Number(point.SafeRateRadiansPerSecond * AngleUnit.DegreesPerRadian)} deg/s, {Number(point.SafeAccelerationRadiansPerSecondSquared * AngleUnit.DegreesPerRadian)} deg/s^2, {point.Facts.TorqueAtRestNewtonMetres:G3} N m at rest, microstep {point.Facts.MicrostepRadians * AngleUnit.ArcSeconds.PerRadian:G3} arcsec.");

    private static string Number(double value) => double.IsFinite(value) ? value.ToString("G3", CultureInfo.InvariantCulture) : "no";
}
