using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;

namespace AxisSim.Plots.TorqueSpeed;

/// <summary>Units and ranges of the torque-speed plane.</summary>
internal static class PlaneScale
{
    public const double RpmPerRadianPerSecond = 60.0 / (2.0 * Math.PI);
    public const double DegreesPerSecondPerRpm = 6.0;
    public const double Height = 560;

    /// <summary>The frame: all curves and the path inside, a little room left of zero speed for the markers there.</summary>
    public static PlotFrame Frame(TorqueSpeedCurves curves)
    {
        double[] speeds = [.. curves.SpeedsRadiansPerSecond.Concat(curves.Path.Select(p => p.SpeedRadiansPerSecond)).Select(Rpm)];
        IReadOnlyList<double>[] torques =
        [
            [.. curves.Path.Select(p => p.TorqueNewtonMetres)],
            .. curves.Curves.Select(c => c.ClosedFormNewtonMetres),
            .. curves.Curves.Select(c => c.SimulatedNewtonMetres),
        ];
        return new PlotFrame(
            Span.Of(speeds).Holding(0).Padded(0.02, 0.02), Span.Of(torques).Holding(0).Padded(0.05, 0.07), Sheet.PlotWidth, Height);
    }

    /// <summary>Motor speed in revolutions per minute.</summary>
    public static double Rpm(double radiansPerSecond) => radiansPerSecond * RpmPerRadianPerSecond;

    /// <summary>A speed for a label.</summary>
    public static string RpmText(double radiansPerSecond) => Rpm(radiansPerSecond).ToString("0", CultureInfo.InvariantCulture);
}
