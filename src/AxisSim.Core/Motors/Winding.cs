namespace AxisSim.Core.Motors;

/// <summary>Resistance and temperature of a copper winding.</summary>
/// <remarks>
/// <para>Resistance <c>R = R20 (1 + alpha (T - 20))</c>, T in degrees Celsius, <c>alpha = 0.00393/K</c> (IEC 60028, annealed copper).</para>
/// <para>Heat: one node, <c>C dT/dt = P - (T - Ta)/Rth</c>, tau = Rth C. Over a time in which the power P (W) stays constant, exactly
/// <c>T = Tend + (T0 - Tend) exp(-t/tau)</c> with <c>Tend = Ta + P Rth</c>. Valid for a motor whose winding and body warm together; the winding
/// of a real one leads its body by some kelvins in the first minute.</para>
/// </remarks>
public static class Winding
{
    /// <summary>Temperature coefficient of copper at 20 degrees Celsius, 1/K (IEC 60028).</summary>
    public const double CopperPerKelvin = 0.00393;

    /// <summary>Temperature at which resistances are given, degrees Celsius.</summary>
    public const double ReferenceCelsius = 20.0;

    /// <summary>Resistance at a temperature over that at 20 degrees Celsius.</summary>
    public static double ResistanceFactor(double celsius) => 1.0 + (CopperPerKelvin * (celsius - ReferenceCelsius));

    /// <summary>Resistance at a temperature, ohm.</summary>
    public static double Resistance(double ohmsAt20, double celsius) => ohmsAt20 * ResistanceFactor(celsius);

    /// <summary>Temperature after a time of constant power, degrees Celsius (or any scale, used throughout).</summary>
    /// <param name="temperature">Temperature at first.</param>
    /// <param name="ambient">Temperature of the surroundings.</param>
    /// <param name="powerWatts">Heating power, W.</param>
    /// <param name="kelvinPerWatt">Thermal resistance to the surroundings, K/W.</param>
    /// <param name="timeConstantSeconds">Thermal time constant, s.</param>
    /// <param name="seconds">Time, s.</param>
    public static double After(double temperature, double ambient, double powerWatts, double kelvinPerWatt, double timeConstantSeconds, double seconds)
    {
        double end = ambient + (powerWatts * kelvinPerWatt);
        return end + ((temperature - end) * Math.Exp(-seconds / timeConstantSeconds));
    }

    /// <summary>Temperature that constant current reaches in the end, degrees Celsius; infinite when the copper's rising loss runs away.</summary>
    /// <param name="ambientCelsius">Temperature of the surroundings.</param>
    /// <param name="coldWatts">Copper loss that the current would make at 20 degrees Celsius, W; it grows with the resistance.</param>
    /// <param name="steadyWatts">Loss that does not depend on temperature (iron), W.</param>
    /// <param name="kelvinPerWatt">Thermal resistance to the surroundings, K/W.</param>
    /// <remarks><c>T = Ta + Rth (P20 (1 + alpha (T - 20)) + Pi)</c> solved for T.</remarks>
    public static double ContinuousCelsius(double ambientCelsius, double coldWatts, double steadyWatts, double kelvinPerWatt)
    {
        double feedback = coldWatts * kelvinPerWatt * CopperPerKelvin;
        double rise = kelvinPerWatt * ((coldWatts * ResistanceFactor(ambientCelsius)) + steadyWatts);
        return feedback < 1.0 ? ambientCelsius + (rise / (1.0 - feedback)) : double.PositiveInfinity;
    }

    /// <summary>Temperature that constant current reaches after a time, from the ambient temperature, degrees Celsius.</summary>
    /// <param name="ambientCelsius">Temperature of the surroundings and of the winding at first.</param>
    /// <param name="coldWatts">Copper loss that the current would make at 20 degrees Celsius, W; it grows with the resistance.</param>
    /// <param name="kelvinPerWatt">Thermal resistance to the surroundings, K/W.</param>
    /// <param name="timeConstantSeconds">Thermal time constant, s.</param>
    /// <param name="seconds">Time, s.</param>
    /// <remarks>
    /// The loss grows with the temperature, so the equation stays linear with a longer time constant: with <c>f = 1 - alpha P20 Rth</c> the rise is
    /// <c>P20 Rth (1 + alpha (Ta - 20)) (1 - exp(-f t/tau))/f</c>; with f = 0 or less it grows without end.
    /// </remarks>
    public static double WarmedUp(double ambientCelsius, double coldWatts, double kelvinPerWatt, double timeConstantSeconds, double seconds)
    {
        double slope = coldWatts * kelvinPerWatt * ResistanceFactor(ambientCelsius);
        double restoring = 1.0 - (coldWatts * kelvinPerWatt * CopperPerKelvin);
        double share = seconds / timeConstantSeconds;
        return ambientCelsius + (slope * (restoring == 0.0 ? share : (1.0 - Math.Exp(-restoring * share)) / restoring));
    }
}
