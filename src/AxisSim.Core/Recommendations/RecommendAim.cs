namespace AxisSim.Core.Recommendations;

/// <summary>What is wanted most of settings that hold with the margin.</summary>
public enum RecommendAim
{
    /// <summary>A compromise: the point of the front nearest to having the best of everything.</summary>
    Balanced,

    /// <summary>Shortest slew with settling.</summary>
    Fastest,

    /// <summary>Microstepping throughout, low current and low speed, in at most twice the time of the fastest.</summary>
    Quietest,

    /// <summary>Lowest winding temperature.</summary>
    Coolest,
}
