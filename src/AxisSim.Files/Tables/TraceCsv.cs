using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Tables;

/// <summary>Writes a trace as CSV in SI units, the unit in each column's name.</summary>
public static class TraceCsv
{
    /// <summary>Writes every sample of the trace.</summary>
    public static void Write(Stream stream, Trace trace)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(trace);
        NumberColumns.Write(stream,
        [
            ("time_s", trace.TimeSeconds),
            ("planned_angle_rad", trace.PlannedAngleRadians),
            ("planned_rate_rad_per_s", trace.PlannedRateRadiansPerSecond),
            ("actual_rate_rad_per_s", trace.ActualRateRadiansPerSecond),
            ("motor_speed_rad_per_s", trace.MotorSpeedRadiansPerSecond),
            ("axis_error_rad", trace.AxisErrorRadians),
            ("payload_error_rad", trace.PayloadErrorRadians),
            ("settle_error_rad", trace.SettleErrorRadians),
            ("load_angle_electrical_rad", trace.LoadAngleRadians),
            ("motor_torque_N_m", trace.MotorTorqueNewtonMetres),
            ("needed_torque_N_m", trace.NeededTorqueNewtonMetres),
            ("available_torque_N_m", trace.AvailableTorqueNewtonMetres),
            ("phase_a_current_A", trace.PhaseACurrentAmperes),
            ("phase_b_current_A", trace.PhaseBCurrentAmperes),
            ("saturation_share", trace.SaturationShare),
            ("bus_voltage_V", trace.BusVolts),
            ("supply_current_A", trace.SupplyCurrentAmperes),
            ("winding_temperature_degC", trace.WindingCelsius),
            ("mesh_torque_N_m", trace.MeshTorqueNewtonMetres),
            ("clutch_slip_rad", trace.ClutchSlipRadians),
            ("full_stepping", trace.FullStepping),
        ]);
    }
}
