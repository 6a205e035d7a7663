using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A run whose numbers broke down: what of the model it was, and which keys govern it.</summary>
internal static class BrokenText
{
    /// <summary>Beyond this a last good value tells nothing but that it had run away.</summary>
    private const double Sane = 1e9;

    /// <summary>The verdict on the mount.</summary>
    public static string Verdict(MountAxis axis) => $"NO VERDICT: the model of the {axis.Words()} breaks down with these figures.";

    /// <summary>What happened, and where to look.</summary>
    public static string Of(AxisOutcome outcome, BrokenRun broken) =>
        $"{Say.Sentence(outcome.Axis.Words())}: the {broken.Quantity} was no longer a finite number {Say.With(broken.TimeSeconds, "s", 6)} after the start, and the run stopped there. " +
        $"One step before, the rotor was at {Value(broken.LastGoodRotorRadians, "rad", 6)} with {Value(broken.LastGoodRotorSpeed, "rad/s", 4)}, " +
        $"the axis at {Value(Units.Degrees(broken.LastGoodAxisRadians), "deg", 6)} with {Value(Units.Degrees(broken.LastGoodAxisSpeed), "deg/s", 4)}. What follows ends there. " +
        $"Look first at {Keys(outcome.Axis.Key(), broken.Quantity)}: a figure there is far from that of a real mount. If all are right, try --step 5us, and report it with the scenario file: then the program is to blame.";

    private static string Keys(string axis, string quantity)
    {
        string[] names = quantity.Split(' ')[0] switch
        {
            "rotor" => ["motor.holding_torque", "motor.rotor_inertia", "motor.inductance", "motor.viscous", "drive.supply_voltage", "drive.damping"],
            "worm" => ["worm.inertia", "the stiffness and inertia of each of its stages"],
            "axis" or "clutch" => ["axis.stiffness", "axis.viscous", "the inertia of the load"],
            "payload" => ["flexible.frequency", "flexible.damping_ratio", "flexible.share"],
            _ => ["motor.inductance", "motor.resistance", "motor.thermal_resistance", "drive.supply_resistance", "drive.bus_capacitance"],
        };
        return Say.List([.. names.Select(name => name.Contains('.', StringComparison.Ordinal) ? $"{axis}.{name}" : name)]);
    }

    private static string Value(double value, string unit, int digits) => Math.Abs(value) < Sane ? Say.With(value, unit, digits) : $"more {unit} than can be";
}
