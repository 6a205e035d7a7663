using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Recommendations;

/// <summary>What is asked of a recommendation.</summary>
public sealed record RecommendOptions
{
    /// <summary>What is wanted most.</summary>
    public RecommendAim Aim { get; init; }

    /// <summary>Load factor asked for: 1.3 for a margin of 30 %.</summary>
    public double LoadFactor { get; init; } = 1.3;

    /// <summary>What is not known exactly.</summary>
    public Tolerances Tolerances { get; init; } = new();

    /// <summary>Latitude, rad, for the usable sky.</summary>
    public double LatitudeRadians { get; init; }

    /// <summary>Mounts to draw for the probability of a stall.</summary>
    public int Samples { get; init; } = 200;

    /// <summary>Seed of the draw.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>A first answer: fewer settings, no sensitivities, only the worst corners verified.</summary>
    public bool Coarse { get; init; }

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Called with what is being done and its share done; from several threads at once.</summary>
    public Action<string, double>? Progress { get; init; }

    /// <summary>Ends the work early with an exception.</summary>
    public CancellationToken Stop { get; init; }
}
