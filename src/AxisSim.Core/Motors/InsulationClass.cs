namespace AxisSim.Core.Motors;

/// <summary>Thermal class of an electrical insulation (IEC 60085); each stands for its greatest continuous temperature.</summary>
public enum InsulationClass
{
    /// <summary>105 degrees Celsius.</summary>
    A,

    /// <summary>120 degrees Celsius.</summary>
    E,

    /// <summary>130 degrees Celsius.</summary>
    B,

    /// <summary>155 degrees Celsius.</summary>
    F,

    /// <summary>180 degrees Celsius.</summary>
    H,

    /// <summary>200 degrees Celsius.</summary>
    N,
}
