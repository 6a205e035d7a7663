using AxisSim.Core.Motors;
using AxisSim.Files.Keys;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Motors;

/// <summary>The columns of a table of motors; bounds are those of the same figure in a scenario.</summary>
internal static class MotorColumns
{
    /// <summary>All of them; the usual unit is that of the example.</summary>
    public static IReadOnlyList<ScenarioKey> All { get; } =
    [
        Text("name", null, "17 long", "a name, different for each motor"),
        Text("frame", "", "17", "frame size or other remark"),
        Number("steps_per_revolution", KeyKind.WholeNumber, null, "200", MotorBounds.StepsPerRevolution, "full steps per revolution"),
        Needed("holding_torque", Dimension.Torque, "0.44 N*m", MotorBounds.HoldingTorque, "holding torque with both phases at the rated current"),
        Needed("rated_current", Dimension.Current, "1.5 A", MotorBounds.RatedCurrent, "rated (direct) current per phase"),
        Needed("resistance", Dimension.Resistance, "1.5 ohm", MotorBounds.Resistance, "resistance per phase at 20 degC"),
        Needed("inductance", Dimension.Inductance, "3 mH", MotorBounds.Inductance, "inductance per phase"),
        Needed("rotor_inertia", Dimension.Inertia, "60 g*cm^2", MotorBounds.RotorInertia, "inertia of the rotor"),
        Free("detent_torque", Dimension.Torque, "4 % of the holding torque", "15 mN*m", MotorBounds.DetentTorque, "detent torque"),
        Free("viscous", Dimension.Damping, "0", "1e-5 N*m*s/rad", MotorBounds.Viscous, "viscous drag on the shaft"),
        Free("friction", Dimension.Torque, "0", "5 mN*m", MotorBounds.CoulombTorque, "dry friction of the motor's own bearings"),
        Free("thermal_resistance", Dimension.ThermalResistance, "rated current raises the winding by 80 K", "12 K/W", MotorBounds.ThermalResistance, "thermal resistance from winding to ambient"),
        Free("thermal_time", Dimension.Time, "25 min", "25 min", MotorBounds.ThermalTimeConstant, "thermal time constant"),
        Choice("insulation_class", "B", "thermal class of the insulation", "A", "E", "B", "F", "H", "N"),
        Choice("wiring", "as-wired", "as-wired: the figures are for the motor as it is wired; else they are for one half coil of each phase, and the word says how those are wired", "as-wired", "bipolar-series", "bipolar-parallel", "half-coil"),
        Text("note", "", "in stock", "any remark; not read"),
    ];

    /// <summary>A line of the columns that must be there.</summary>
    public static string Example => string.Join(",", All.Where(key => key.Required).Select(SheetColumns.Shown));
}
