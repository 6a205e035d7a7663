using AxisSim.Core.Reductions;

namespace AxisSim.Files.Tables;

/// <summary>Writes the lesson on the reduction as CSV in SI units, the unit in each column's name.</summary>
public static class ReductionCsv
{
    private static readonly (string Name, Func<ReductionPoint, double> Value)[] s_columns =
    [
        ("total_reduction", point => point.Facts.TotalReduction),
        ("stage_ratio", point => point.Facts.LastStageRatio),
        ("steady_rate_closed_form_rad_per_s", point => point.Facts.RateRadiansPerSecond),
        ("greatest_safe_rate_rad_per_s", point => point.SafeRateRadiansPerSecond),
        ("first_failing_rate_rad_per_s", point => point.FirstFailingRateRadiansPerSecond),
        ("pulse_limit_rad_per_s", point => point.Facts.PulseLimitRadiansPerSecond),
        ("acceleration_closed_form_rad_per_s2", point => point.Facts.AccelerationRadiansPerSecondSquared),
        ("greatest_safe_acceleration_rad_per_s2", point => point.SafeAccelerationRadiansPerSecondSquared),
        ("acceleration_tried_at_rad_per_s", point => point.AccelerationTriedAtRadiansPerSecond),
        ("torque_at_rest_N_m", point => point.Facts.TorqueAtRestNewtonMetres),
        ("torque_at_slew_closed_form_N_m", point => point.Facts.TorqueAtSlewNewtonMetres),
        ("torque_at_slew_simulated_N_m", point => point.TorqueAtSlewNewtonMetres),
        ("needed_at_slew_N_m", point => point.Facts.NeededAtSlewNewtonMetres),
        ("full_step_rad", point => point.Facts.FullStepRadians),
        ("microstep_rad", point => point.Facts.MicrostepRadians),
        ("friction_lag_rad", point => point.Facts.FrictionLagRadians),
        ("inertia_ratio", point => point.Facts.InertiaRatio),
        ("pulse_rate_Hz", point => point.Facts.PulsesPerSecond),
        ("motor_speed_rad_per_s", point => point.Facts.MotorSpeedRadiansPerSecond),
        ("own_margin_share", point => point.OwnMargin),
        ("own_load_factor", point => point.OwnLoadFactor?.Value ?? double.NaN),
        ("own_settle_s", point => point.OwnSettleSeconds),
    ];

    /// <summary>Writes one row per reduction; what was not found or does not exist is left empty.</summary>
    public static void Write(Stream stream, ReductionResult result)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(result);
        NumberColumns.Write(stream, [.. s_columns.Select(column => (column.Name, (IReadOnlyList<double>)[.. result.Points.Select(column.Value)]))]);
    }
}
