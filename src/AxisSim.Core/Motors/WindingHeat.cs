namespace AxisSim.Core.Motors;

/// <summary>The thermal data of one winding; the laws are those of <see cref="Winding"/>.</summary>
/// <param name="AmbientCelsius">Ambient temperature, degrees Celsius.</param>
/// <param name="KelvinPerWatt">Thermal resistance, K/W; 0 leaves heating out.</param>
/// <param name="TimeConstantSeconds">Thermal time constant, s.</param>
internal readonly record struct WindingHeat(double AmbientCelsius, double KelvinPerWatt, double TimeConstantSeconds)
{
    /// <summary>Temperature after a time under constant loss.</summary>
    public double After(double celsius, double watts, double seconds) =>
        KelvinPerWatt > 0.0 ? Winding.After(celsius, AmbientCelsius, watts, KelvinPerWatt, TimeConstantSeconds, seconds) : celsius;

    /// <summary>Resistance at a temperature, ohm.</summary>
    public double Resistance(double ohmsAt20, double celsius) => KelvinPerWatt > 0.0 ? Winding.Resistance(ohmsAt20, celsius) : ohmsAt20;

    /// <summary>Temperature under a loss without end, from the loss at 20 degrees Celsius.</summary>
    public double Balance(double wattsAt20) => Winding.ContinuousCelsius(AmbientCelsius, wattsAt20, 0.0, KelvinPerWatt);
}
