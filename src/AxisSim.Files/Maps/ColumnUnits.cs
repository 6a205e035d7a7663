using System.Text;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Files.Maps;

/// <summary>Units as parts of the names of columns.</summary>
internal static class ColumnUnits
{
    /// <summary>The SI unit of a key's values; empty for plain numbers and shares.</summary>
    public static string Si(ScenarioKey key, Value value) => key.Kind != KeyKind.Quantity ? "" : key.Dimension switch
    {
        Dimension.Mass => "kg",
        Dimension.Length => "m",
        Dimension.Area => "m2",
        Dimension.Angle or Dimension.HourAngle => "rad",
        Dimension.AxisRate => "rad_per_s",
        Dimension.AxisOrMotorRate => value.Place switch { RatePlace.Axis => "rad_per_s_at_axis", RatePlace.Motor => "rad_per_s_at_motor", _ => "full_steps_per_s" },
        Dimension.AngularAcceleration => "rad_per_s2",
        Dimension.Torque => "N_m",
        Dimension.Current => "A",
        Dimension.Resistance => "ohm",
        Dimension.Inductance => "H",
        Dimension.Capacitance => "F",
        Dimension.Voltage => "V",
        Dimension.Inertia => "kg_m2",
        Dimension.Stiffness => "N_m_per_rad",
        Dimension.Damping => "N_m_s_per_rad",
        Dimension.ThermalResistance => "K_per_W",
        Dimension.Temperature => "degC",
        Dimension.Frequency => "Hz",
        Dimension.PulseRate => "microsteps_per_s",
        Dimension.Time => "s",
        Dimension.Speed => "m_per_s",
        Dimension.Density => "kg_per_m3",
        _ => "",
    };

    /// <summary>A unit as it was written: <c>deg/s^2</c> becomes <c>deg_per_s2</c>, <c>N*m</c> becomes <c>N_m</c>.</summary>
    public static string Written(string unit)
    {
        var name = new StringBuilder(unit.Length + 8);
        foreach (char c in UnitSpelling.Plain(unit).Replace("/", "_per_", StringComparison.Ordinal).Replace("%", "percent", StringComparison.Ordinal))
        {
            _ = char.IsAsciiLetterOrDigit(c) || c == '_' ? name.Append(c) : c == '^' ? name : name.Append('_');
        }

        return name.ToString();
    }
}
