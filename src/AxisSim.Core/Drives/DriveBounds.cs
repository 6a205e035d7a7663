using AxisSim.Core.Bounds;

namespace AxisSim.Core.Drives;

/// <summary>What the figures of a <see cref="ChopperDrive"/> may be.</summary>
public static class DriveBounds
{
    /// <summary>Greatest phase current over the rated one. Above it a winding draws four times its rated heat: a slip of the pen rather than a daring design.</summary>
    public const double GreatestOverRated = 2.0;

    /// <summary>Supply voltage.</summary>
    public static Bound SupplyVoltage { get; } = Bound.Above(0, 400, "V");

    /// <summary>Resistance of supply and leads.</summary>
    public static Bound SupplyResistance { get; } = Bound.From(0, 100, "ohm");

    /// <summary>Capacitance across the drive's supply.</summary>
    public static Bound BusCapacitance { get; } = Bound.From(1e-6, 1, "F");

    /// <summary>Bus voltage above which braking energy is dumped; above the supply voltage too.</summary>
    public static Bound BrakeLimit { get; } = Bound.Above(0, 1000, "V").OrInfinite();

    /// <summary>Phase current while the axis moves.</summary>
    public static Bound MovingCurrent { get; } = Bound.Above(0, 100, "A");

    /// <summary>Phase current at rest.</summary>
    public static Bound HoldingCurrent { get; } = Bound.From(0, 100, "A");

    /// <summary>Delay of the fall of the current.</summary>
    public static Bound CurrentFallDelay { get; } = Bound.From(0, 3600, "s");

    /// <summary>Microsteps per full step.</summary>
    public static Bound Microsteps { get; } = Bound.Whole(1, 1024);

    /// <summary>Speed above which the drive full-steps.</summary>
    public static Bound Changeover { get; } = Bound.From(0, double.PositiveInfinity, "rad/s").OrInfinite();

    /// <summary>Current of each phase while full-stepping over the peak of the sine.</summary>
    public static Bound FullStepCurrent { get; } = Bound.From(0.7, 1);

    /// <summary>Time constant of the current regulator.</summary>
    public static Bound RegulatorTime { get; } = Bound.From(1e-6, 1e-2, "s");

    /// <summary>Damping torque per difference of rotor speed and commanded speed.</summary>
    public static Bound Damping { get; } = Bound.From(0, 1, "N m s/rad");

    /// <summary>The same as a share of critical.</summary>
    public static Bound DampingShare { get; } = Bound.From(0, 2);

    /// <summary>Greatest pulse rate of the controller.</summary>
    public static Bound MaximumPulseRate { get; } = Bound.Above(0, 1e8, "Hz").OrInfinite();
}
