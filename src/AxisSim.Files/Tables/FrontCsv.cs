using AxisSim.Core.Recommendations;

namespace AxisSim.Files.Tables;

/// <summary>Writes a trade-off as CSV in SI units, the unit in each column's name.</summary>
public static class FrontCsv
{
    /// <summary>Writes one row per point; an empty changeover means that the drive always microsteps.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="points">The points.</param>
    /// <param name="chosen">The recommended one, 1 in the first column.</param>
    public static void Write(Stream stream, IReadOnlyList<FrontPoint> points, FrontPoint? chosen)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(points);
        (string, IReadOnlyList<double>) Column(string name, Func<FrontPoint, double> value) => (name, [.. points.Select(value)]);
        NumberColumns.Write(stream,
        [
            Column("recommended", point => point == chosen ? 1.0 : 0.0),
            Column("slew_rate_rad_per_s", point => point.Settings.SlewRateRadiansPerSecond),
            Column("ramp_s", point => point.Settings.RampSeconds),
            Column("slew_current_A_peak", point => point.Settings.SlewCurrentAmperes),
            Column("tracking_current_A_peak", point => point.Settings.TrackingCurrentAmperes),
            Column("holding_current_A_peak", point => point.Settings.HoldingCurrentAmperes),
            Column("changeover_rad_per_s", point => point.Settings.ChangeoverRadiansPerSecond),
            Column("slew_s", point => point.SlewSeconds),
            Column("settle_s", point => point.SettleSeconds),
            Column("load_factor_1", point => point.LoadFactor),
            Column("winding_degC", point => point.ContinuousCelsius),
        ]);
    }
}
