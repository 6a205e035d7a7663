using System.Globalization;
using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Tables;

/// <summary>Writes the torque-speed plane as CSV in SI units, the unit in each column's name.</summary>
public static class CurvesCsv
{
    /// <summary>
    /// Writes the pull-out curves: one row per motor speed, three columns per mode and supply (closed form; simulated least, below which every load keeps sync,
    /// and greatest, above which none does), and a column per mode, 1 where the two are a band at nominal supply. A torque that was not simulated is left empty.
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
            columns.Add(($"{name}_least_N_m", curve.LeastNewtonMetres));
            columns.Add(($"{name}_greatest_N_m", curve.GreatestNewtonMetres));
        }

        foreach (PullOutCurve curve in curves.Curves.Where(curve => curve.Supply == SupplyLevel.Nominal))
        {
            columns.Add(($"band_{ModeOf(curve)}", [.. Enumerable.Range(0, curves.SpeedsRadiansPerSecond.Count).Select(i => double.IsNaN(curve.LeastNewtonMetres[i]) ? double.NaN : curve.At(i).IsBand ? 1.0 : 0.0)]));
        }

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
        string supply = curve.Supply switch { SupplyLevel.Low => "low", SupplyLevel.High => "high", _ => "nominal" };
        return string.Create(CultureInfo.InvariantCulture, $"pull_out_{ModeOf(curve)}_{supply}_{curve.SupplyVolts:0.##}V");
    }

    private static string ModeOf(PullOutCurve curve) => curve.FullStepping ? "full_step" : "microstep";
}
