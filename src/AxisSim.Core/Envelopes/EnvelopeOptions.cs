using AxisSim.Core.Stepping;

namespace AxisSim.Core.Envelopes;

/// <summary>How an envelope is searched.</summary>
public sealed record EnvelopeOptions
{
    /// <summary>Rates are whole multiples of this, rad/s.</summary>
    public required double ResolutionRadiansPerSecond { get; init; }

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Called with the share of the work that is done; from several threads at once.</summary>
    public Action<double>? Progress { get; init; }

    /// <summary>Ends the search early with an exception.</summary>
    public CancellationToken Stop { get; init; }
}
