using AxisSim.Core.Stepping;

namespace AxisSim.Core.Reductions;

/// <summary>What to compute of an axis over its reduction.</summary>
public sealed record ReductionOptions
{
    /// <summary>Total reductions; the scenario's own is added.</summary>
    public required IReadOnlyList<double> TotalRatios { get; init; }

    /// <summary>Margin, 0 or more: 0.3 asks for a load factor of 1.3.</summary>
    public double MarginShare { get; init; } = DefaultMarginShare;

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Called with the share of the work that is done; from several threads at once.</summary>
    public Action<double>? Progress { get; init; }

    /// <summary>Ends the work early with an exception.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>Datasheet friction is good to about 30 % (common practice, no source).</summary>
    public const double DefaultMarginShare = 0.3;
}
