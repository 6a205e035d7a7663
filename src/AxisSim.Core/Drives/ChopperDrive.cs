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

    /// <summary>Time constant tau of the current regulator, s: how far the current lags its command.</summary>
    /// <remarks>
    /// It leaves <c>1/sqrt(1 + (Nr w tau)^2)</c> of the commanded current, Nr rotor teeth, w shaft speed (rad/s). Default: <see cref="UsualRegulatorSeconds"/>.
    /// </remarks>
    public double RegulatorSeconds { get; init; } = UsualRegulatorSeconds;

    /// <summary>Damping of the rotor against its commanded speed, N m s/rad; null takes <see cref="DampingShare"/>.</summary>
    public double? GivenDampingNewtonMetreSecondsPerRadian { get; init; }

    /// <summary>Damping of the rotor against its commanded speed as a share of critical; see <see cref="RotorDamping"/> for what that is and why this default.</summary>
    public double DampingShare { get; init; } = RotorDamping.UsualShare;

    /// <summary>The regulator's time constant where none is given, s: two periods at 50 kHz, one at 25 kHz.</summary>
    /// <remarks>
    /// A comparator chopper corrects its current once in a period, so it lags by one to two of them. Choppers work above the audible range: 30 to 50 kHz is
    /// recommended, and a fixed off-time of 50 us, which leaves less than 20 kHz, is called legacy (application report "How to Reduce Audible Noise in
    /// Stepper Motors", 2020, on the effects of the chopping frequency). That one to two periods are the time constant is common practice, no source.
    /// </remarks>
    public const double UsualRegulatorSeconds = 40e-6;

    /// <summary>The least that is usual, s: a period at 50 kHz.</summary>
    public const double LeastUsualRegulatorSeconds = 20e-6;

    /// <summary>The most that is usual, s: two periods at the edge of hearing, 20 kHz.</summary>
    public const double MostUsualRegulatorSeconds = 100e-6;

    /// <summary>Greatest pulse rate of the controller, microsteps per second.</summary>
    public double MaximumPulseRateHertz { get; init; } = double.PositiveInfinity;
}
