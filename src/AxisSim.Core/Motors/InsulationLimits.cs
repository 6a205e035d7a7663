namespace AxisSim.Core.Motors;

/// <summary>Greatest continuous temperatures of the thermal classes (IEC 60085).</summary>
public static class InsulationLimits
{
    /// <summary>Limit of a class, degrees Celsius.</summary>
    public static double LimitCelsius(this InsulationClass insulation) => insulation switch
    {
        InsulationClass.A => 105.0,
        InsulationClass.E => 120.0,
        InsulationClass.B => 130.0,
        InsulationClass.F => 155.0,
        InsulationClass.H => 180.0,
        InsulationClass.N => 200.0,
        _ => throw new ArgumentOutOfRangeException(nameof(insulation), insulation, "no such insulation class"),
    };
}
