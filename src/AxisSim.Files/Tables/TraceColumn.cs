using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Tables;

/// <summary>How a quantity of a trace is named in a table.</summary>
/// <param name="Quantity">The quantity.</param>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit, as the end of a column's name; empty for what is either 0 or 1.</param>
/// <param name="Mean">Whether its mean over a stretch says something of its own.</param>
internal sealed record TraceColumn(TraceQuantity Quantity, string Name, string Unit, bool Mean = false)
{
    /// <summary>All quantities, in the order of a table.</summary>
    public static IReadOnlyList<TraceColumn> All { get; } =
    [
        new(TraceQuantity.PlannedAngleRadians, "planned_angle", "rad"),
        new(TraceQuantity.PlannedRateRadiansPerSecond, "planned_rate", "rad_per_s"),
        new(TraceQuantity.ActualRateRadiansPerSecond, "actual_rate", "rad_per_s"),
        new(TraceQuantity.MotorSpeedRadiansPerSecond, "motor_speed", "rad_per_s", Mean: true),
        new(TraceQuantity.AxisErrorRadians, "axis_error", "rad"),
        new(TraceQuantity.PayloadErrorRadians, "payload_error", "rad"),
        new(TraceQuantity.SettleErrorRadians, "settle_error", "rad"),
        new(TraceQuantity.LoadAngleRadians, "load_angle", "electrical_rad"),
        new(TraceQuantity.HeldFromRadians, "load_angle_held_from", "electrical_rad"),
        new(TraceQuantity.HeldToRadians, "load_angle_held_to", "electrical_rad"),
        new(TraceQuantity.MotorTorqueNewtonMetres, "motor_torque", "N_m", Mean: true),
        new(TraceQuantity.NeededTorqueNewtonMetres, "needed_torque", "N_m"),
        new(TraceQuantity.AvailableTorqueNewtonMetres, "available_torque", "N_m"),
        new(TraceQuantity.PhaseACurrentAmperes, "phase_a_current", "A"),
        new(TraceQuantity.PhaseBCurrentAmperes, "phase_b_current", "A"),
        new(TraceQuantity.CurrentAmplitudeAmperes, "current_amplitude", "A"),
        new(TraceQuantity.Saturated, "saturation", ""),
        new(TraceQuantity.BusVolts, "bus_voltage", "V"),
        new(TraceQuantity.SupplyCurrentAmperes, "supply_current", "A", Mean: true),
        new(TraceQuantity.WindingCelsius, "winding_temperature", "degC"),
        new(TraceQuantity.MeshTorqueNewtonMetres, "mesh_torque", "N_m"),
        new(TraceQuantity.ClutchSlipRadians, "clutch_slip", "rad"),
        new(TraceQuantity.FullStepping, "full_stepping", ""),
    ];

    /// <summary>The column of one quantity.</summary>
    public static TraceColumn Of(TraceQuantity quantity) => All.First(column => column.Quantity == quantity);

    /// <summary>Name of the column of single values.</summary>
    public string Single => Unit.Length == 0 ? Name : $"{Name}_{Unit}";

    /// <summary>Name of a column that says what it holds of a stretch.</summary>
    public string Part(string part) => $"{Name}_{part}_{Unit}";

    /// <summary>The columns of a range over stretches: least and greatest, and the mean where it says something; of what is 0 or 1 the share of the time in which it is 1.</summary>
    public IEnumerable<(string Name, IReadOnlyList<double> Values)> Of(TraceRange range)
    {
        if (Unit.Length == 0)
        {
            yield return ($"{Name}_share", range.Mean);
            yield break;
        }

        yield return (Part("least"), range.Least);
        if (Mean)
        {
            yield return (Part("mean"), range.Mean);
        }

        yield return (Part("greatest"), range.Greatest);
    }
}
