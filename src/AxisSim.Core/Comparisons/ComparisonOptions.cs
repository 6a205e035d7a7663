using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Comparisons;

/// <summary>How candidates are compared.</summary>
public sealed record ComparisonOptions
{
    /// <summary>Common factor on inertia, imbalance and friction at which a rate must still arrive: 1.3 for a margin of 30 %.</summary>
    public required double LoadFactor { get; init; }

    /// <summary>Rates are whole multiples of this, rad/s.</summary>
    public required double ResolutionRadiansPerSecond { get; init; }

    /// <summary>Slew current over rated current.</summary>
    public double CurrentShare { get; init; } = 1.0;

    /// <summary>Simulate every candidate, also those that the closed form rules out.</summary>
    public bool All { get; init; }

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Called with the share of the work that is done; from several threads at once.</summary>
    public Action<double>? Progress { get; init; }

    /// <summary>Ends the comparison early with an exception.</summary>
    public CancellationToken Stop { get; init; }
}
