using System.Globalization;
using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Tables;

/// <summary>Writes the torque-speed plane as CSV in SI units, the unit in each column's name.</summary>
public static class CurvesCsv
{
    /// <summary>
    /// Writes the pull-out curves: one row per motor speed, two columns per mode and supply (closed form and simulated), and
    /// <c>unstable</c>, 1 where full-stepping is unstable at nominal supply. A torque that was not simulated is left empty.
    /// </summary>
    public static void WriteCurves(Stream stream, TorqueSpeedCurves curves)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(curves);
        var columns = new List<(string Name, IReadOnlyList<double> Values)> { ("motor_speed_rad_per_s", curves.SpeedsRadiansPerSecond) };
        foreach (PullOutCurve curve in curves.Curves)
        {
            string name = NameOf(curve);
            columns.Add(($"{name}_closed_form_N_m", curve.ClosedFormNewtonMetres));
            columns.Add(($"{name}_simulated_N_m", curve.SimulatedNewtonMetres));
        }

        columns.Add(("unstable", [.. curves.SpeedsRadiansPerSecond.Select(speed => curves.UnstableBands.Any(band => speed >= band.FromRadiansPerSecond && speed <= band.ToRadiansPerSecond) ? 1.0 : 0.0)]));
        NumberColumns.Write(stream, columns);
    }

    /// <summary>Writes the path of the planned move through that plane.</summary>
    public static void WritePath(Stream stream, TorqueSpeedCurves curves)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(curves);
        NumberColumns.Write(stream,
        [
            ("time_s", [.. curves.Path.Select(point => point.TimeSeconds)]),
            ("motor_speed_rad_per_s", [.. curves.Path.Select(point => point.SpeedRadiansPerSecond)]),
            ("needed_torque_N_m", [.. curves.Path.Select(point => point.TorqueNewtonMetres)]),
        ]);
    }

    private static string NameOf(PullOutCurve curve)
    {
        string mode = curve.FullStepping ? "full_step" : "microstep";
        string supply = curve.Supply switch { SupplyLevel.Low => "low", SupplyLevel.High => "high", _ => "nominal" };
        return string.Create(CultureInfo.InvariantCulture, $"pull_out_{mode}_{supply}_{curve.SupplyVolts:0.##}V");
    }
}
