using AxisSim.Core.Stepping;

namespace AxisSim.Core.Batches;

/// <summary>How much of each case is wanted.</summary>
public enum BatchDepth
{
    /// <summary>Whether it arrives: a case ends where it fails, or shortly after its slew.</summary>
    Outcome,

    /// <summary>The whole move with settling and heat.</summary>
    Settling,
}

/// <summary>What to compute of a batch, and how.</summary>
public sealed record BatchOptions
{
    /// <summary>How much of each case is wanted.</summary>
    public BatchDepth Depth { get; init; }

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Takes the step as asked even where speed or modes want a shorter one: for comparison with programs that know no other.</summary>
    internal bool StepAsAsked { get; init; }

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Registers to use; a matter of speed, not of results.</summary>
    public BatchWidth Width { get; init; }

    /// <summary>Called with the index of a case and its result as each is done; from several threads at once.</summary>
    public Action<int, BatchResult>? Finished { get; init; }

    /// <summary>Ends the batch early; what was finished has been reported.</summary>
    public CancellationToken Stop { get; init; }
}
