using AxisSim.Core.Reductions;

namespace AxisSim.Plots.Pictures;

/// <summary>What the total reduction changes, ready to be drawn.</summary>
public sealed record ReductionPicture
{
    /// <summary>Title.</summary>
    public required string Title { get; init; }

    /// <summary>The verdict in a sentence or two, drawn under the title; may be empty.</summary>
    public string Sentence { get; init; } = "";

    /// <summary>The points, the scenario's own and the match.</summary>
    public required ReductionResult Result { get; init; }

    /// <summary>Slew rate of the scenario, rad/s.</summary>
    public required double AskedRateRadiansPerSecond { get; init; }

    /// <summary>Greatest acceleration of the scenario, rad/s2.</summary>
    public required double AskedAccelerationRadiansPerSecondSquared { get; init; }

    /// <summary>The band within which the axis counts as settled, rad.</summary>
    public required double ToleranceRadians { get; init; }
}
