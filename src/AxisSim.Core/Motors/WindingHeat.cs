namespace AxisSim.Core.Motors;

/// <summary>One thermal node for the winding, and its resistance against temperature.</summary>
/// <remarks>
/// Law: <c>C dT/dt = P - (T - Ta)/Rth</c> with time constant <c>Rth C</c>; T winding, Ta ambient (degrees Celsius), P copper loss (W), Rth (K/W).
/// Resistance <c>R = R20 (1 + 0.00393 (T - 20))</c> (IEC 60028, annealed copper). One node cannot show the fast rise of the
/// winding above the iron; it is right over minutes.
/// </remarks>
/// <param name="AmbientCelsius">Ambient temperature.</param>
/// <param name="KelvinPerWatt">Thermal resistance; 0 leaves heating out.</param>
/// <param name="TimeConstantSeconds">Time constant, s.</param>
internal readonly record struct WindingHeat(double AmbientCelsius, double KelvinPerWatt, double TimeConstantSeconds)
{
    /// <summary>Temperature coefficient of copper at 20 degrees Celsius, 1/K (IEC 60028).</summary>
    public const double CopperCoefficientPerKelvin = 0.00393;

    /// <summary>Temperature after a time under constant loss: the exact exponential.</summary>
    public double After(double celsius, double watts, double seconds)
    {
        double rest = AmbientCelsius + (watts * KelvinPerWatt);
        return rest + ((celsius - rest) * Math.Exp(-seconds / TimeConstantSeconds));
    }

    /// <summary>Resistance at a temperature, ohm.</summary>
    public double Resistance(double ohmsAt20, double celsius) =>
        KelvinPerWatt > 0.0 ? ohmsAt20 * (1.0 + (CopperCoefficientPerKelvin * (celsius - 20.0))) : ohmsAt20;

    /// <summary>
    /// Temperature at which loss and cooling balance when the winding carries the current for ever, from the loss that it would have at 20 degrees
    /// Celsius; infinite when the rise of resistance outruns the cooling.
    /// </summary>
    public double Balance(double wattsAt20)
    {
        double gain = KelvinPerWatt * wattsAt20 * CopperCoefficientPerKelvin;
        return gain >= 1.0
            ? double.PositiveInfinity
            : (AmbientCelsius + (KelvinPerWatt * wattsAt20 * (1.0 - (20.0 * CopperCoefficientPerKelvin)))) / (1.0 - gain);
    }
}
