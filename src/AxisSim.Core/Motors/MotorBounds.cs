using AxisSim.Core.Bounds;

namespace AxisSim.Core.Motors;

/// <summary>What the figures of a <see cref="StepperMotor"/> may be.</summary>
public static class MotorBounds
{
    /// <summary>Full steps in one revolution; four to an electrical turn.</summary>
    public static Bound StepsPerRevolution { get; } = Bound.Whole(8, 4000, multipleOf: 4);

    /// <summary>Holding torque.</summary>
    public static Bound HoldingTorque { get; } = Bound.Above(0, 200, "N m");

    /// <summary>Rated current.</summary>
    public static Bound RatedCurrent { get; } = Bound.Above(0, 100, "A");

    /// <summary>Phase resistance.</summary>
    public static Bound Resistance { get; } = Bound.Above(0, 1000, "ohm");

    /// <summary>Phase inductance.</summary>
    public static Bound Inductance { get; } = Bound.Above(0, 1, "H");

    /// <summary>Rotor inertia.</summary>
    public static Bound RotorInertia { get; } = Bound.Above(0, 0.1, "kg m2");

    /// <summary>Detent torque.</summary>
    public static Bound DetentTorque { get; } = Bound.From(0, 50, "N m");

    /// <summary>Viscous drag on the shaft.</summary>
    public static Bound Viscous { get; } = Bound.From(0, 1, "N m s/rad");

    /// <summary>Dry friction of the motor's own bearings.</summary>
    public static Bound CoulombTorque { get; } = Bound.From(0, 50, "N m");

    /// <summary>Thermal resistance where it is given; a setup made in code may also give 0, which leaves heating out.</summary>
    public static Bound ThermalResistance { get; } = Bound.Above(0, 1000, "K/W");

    /// <summary>Thermal time constant: up to 1000 min.</summary>
    public static Bound ThermalTimeConstant { get; } = Bound.Above(0, 60000, "s");
}
