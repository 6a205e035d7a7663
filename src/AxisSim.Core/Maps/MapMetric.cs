namespace AxisSim.Core.Maps;

/// <summary>What a map shows of each cell.</summary>
public enum MapMetric
{
    /// <summary>Whether it arrives.</summary>
    Outcome,

    /// <summary>Least torque margin on the planned path.</summary>
    Margin,

    /// <summary>Time to settle after the slew.</summary>
    Settle,

    /// <summary>Time of slew and settling together.</summary>
    Duration,

    /// <summary>The hottest winding temperature after slewing, tracking or holding without end.</summary>
    Temperature,
}
