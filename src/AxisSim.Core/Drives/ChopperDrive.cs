namespace AxisSim.Core.Drives;

/// <summary>A current-regulating chopper drive for one two-phase stepper, with its supply.</summary>
/// <remarks>Currents are peaks of the phase sine. Speeds are those of the motor shaft in rad/s.</remarks>
public sealed record ChopperDrive
{
    /// <summary>Open-circuit supply voltage, V.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>Resistance of supply and leads, ohm; 0 is an ideal supply.</summary>
    public double SupplyResistanceOhms { get; init; }

    /// <summary>Capacitance across the drive's supply terminals, F; used when the supply has a resistance.</summary>
    public double BusCapacitanceFarads { get; init; } = 1e-3;

    /// <summary>Bus voltage above which braking energy is dumped, V; infinite when nothing limits it.</summary>
    public double BrakeLimitVolts { get; init; } = double.PositiveInfinity;

    /// <summary>Phase current while slewing, A peak.</summary>
    public required double SlewCurrentAmperes { get; init; }

    /// <summary>Phase current while tracking, A peak.</summary>
    public required double TrackingCurrentAmperes { get; init; }

    /// <summary>Phase current at rest, A peak.</summary>
    public required double HoldingCurrentAmperes { get; init; }

    /// <summary>Delay from the end of the motion to the fall of the slew current, s.</summary>
    public double CurrentFallDelaySeconds { get; init; } = 0.5;

    /// <summary>Microsteps per full step.</summary>
    public required int MicrostepsPerFullStep { get; init; }

    /// <summary>Commanded shaft speed above which the drive full-steps, rad/s; infinite when it always microsteps.</summary>
    public double ChangeoverRadiansPerSecond { get; init; } = double.PositiveInfinity;

    /// <summary>Current of each phase while full-stepping over the peak of the microstepping sine, 0.707 to 1.</summary>
    public double FullStepCurrentFraction { get; init; } = 1.0;

    /// <summary>Time constant of the current regulator, s.</summary>
    public double RegulatorSeconds { get; init; } = 100e-6;

    /// <summary>Damping torque per difference of rotor speed and commanded speed, N m s/rad (what an imperfect regulator adds).</summary>
    public double DampingNewtonMetreSecondsPerRadian { get; init; }

    /// <summary>Greatest pulse rate of the controller, microsteps per second.</summary>
    public double MaximumPulseRateHertz { get; init; } = double.PositiveInfinity;
}
