namespace AxisSim.Core.Motors;

/// <summary>How the two half coils of each phase are connected to a bipolar drive.</summary>
public enum MotorWiring
{
    /// <summary>One half coil of each phase is used; the other is left open.</summary>
    HalfCoil,

    /// <summary>Both half coils in series: twice the resistance, four times the inductance.</summary>
    BipolarSeries,

    /// <summary>Both half coils in parallel: half the resistance, the same inductance.</summary>
    BipolarParallel,
}
