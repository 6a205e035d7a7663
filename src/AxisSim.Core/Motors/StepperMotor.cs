namespace AxisSim.Core.Motors;

/// <summary>A two-phase hybrid stepper motor as it is wired to its drive, in SI units.</summary>
/// <remarks>
/// <para>Current means the peak of the phase sine everywhere. The holding torque is that of a datasheet: two phases on,
/// each at the rated (direct) current. Then the torque constant per phase is
/// <c>Km = T_hold / (sqrt(2) I_rated)</c> in N m/A (equally V s/rad).</para>
/// <para>Valid while the iron is not saturated: torque is linear in current.</para>
/// </remarks>
public sealed record StepperMotor
{
    /// <summary>Full steps in one revolution of the shaft: 200 for 1.8 degrees, 400 for 0.9 degrees.</summary>
    public required int StepsPerRevolution { get; init; }

    /// <summary>Holding torque with both phases on at the rated current, N m.</summary>
    public required double HoldingTorqueNewtonMetres { get; init; }

    /// <summary>Rated current per phase, A (direct current, so the peak of the phase sine).</summary>
    public required double RatedCurrentAmperes { get; init; }

    /// <summary>Phase resistance at 20 degrees Celsius, ohm.</summary>
    public required double ResistanceOhms { get; init; }

    /// <summary>Phase inductance, H.</summary>
    public required double InductanceHenries { get; init; }

    /// <summary>Rotor inertia, kg m2.</summary>
    public required double RotorInertiaKilogramSquareMetres { get; init; }

    /// <summary>Detent torque, N m: amplitude of the torque that the unpowered motor shows four times per tooth.</summary>
    public double DetentTorqueNewtonMetres { get; init; }

    /// <summary>Viscous drag on the shaft (bearing, eddy currents), N m s/rad.</summary>
    public double ViscousNewtonMetreSecondsPerRadian { get; init; }

    /// <summary>Dry friction of the motor's own bearings, N m.</summary>
    public double CoulombTorqueNewtonMetres { get; init; }

    /// <summary>Thermal resistance winding to ambient, K/W; null takes the default of <see cref="ThermalResistanceKelvinPerWatt"/>.</summary>
    public double? GivenThermalResistanceKelvinPerWatt { get; init; }

    /// <summary>Thermal time constant, s (default 25 min: common practice for mid frame sizes, no source).</summary>
    public double ThermalTimeConstantSeconds { get; init; } = 1500.0;

    /// <summary>Insulation class of the winding (IEC 60085).</summary>
    public InsulationClass Insulation { get; init; } = InsulationClass.B;

    /// <summary>Rotor teeth <c>Nr</c> = full steps per revolution / 4; electrical angle = <c>Nr</c> times shaft angle.</summary>
    public double RotorTeeth => StepsPerRevolution / 4.0;

    /// <summary>Torque constant per phase <c>Km = T_hold / (sqrt(2) I_rated)</c>, N m/A.</summary>
    public double TorqueConstantNewtonMetresPerAmpere => HoldingTorqueNewtonMetres / (Math.Sqrt(2.0) * RatedCurrentAmperes);

    /// <summary>Angle of one full step, rad.</summary>
    public double FullStepRadians => 2.0 * Math.PI / StepsPerRevolution;

    /// <summary>Thermal resistance in use, K/W; by default such that both phases at rated current without end raise the winding from 20 to 100 degrees Celsius.</summary>
    /// <remarks>
    /// <c>80 K / (2 I^2 R100)</c> with the resistance at 100 degrees (1.3144 times that at 20): with the cold resistance, the warmer copper's higher loss
    /// would end at a rise of 117 K. Common practice for a rated current, no source.
    /// </remarks>
    public double ThermalResistanceKelvinPerWatt => GivenThermalResistanceKelvinPerWatt
        ?? RatedRiseKelvin / (2.0 * RatedCurrentAmperes * RatedCurrentAmperes * Winding.Resistance(ResistanceOhms, Winding.ReferenceCelsius + RatedRiseKelvin));

    private const double RatedRiseKelvin = 80.0;
}
