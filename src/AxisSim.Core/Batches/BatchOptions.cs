using AxisSim.Core.Dynamics;

namespace AxisSim.Core.Batches;

/// <summary>How much of each case is wanted.</summary>
public enum BatchDepth
{
    /// <summary>Whether it arrives: a case ends where it fails, or shortly after its slew.</summary>
    Outcome,

    /// <summary>The whole move with settling and heat.</summary>
    Settling,
}

/// <summary>How many moves the machine's registers take side by side.</summary>
public enum BatchWidth
{
    /// <summary>As many as this machine can.</summary>
    Best,

    /// <summary>One.</summary>
    One,

    /// <summary>Two, in 128 bits.</summary>
    Two,

    /// <summary>Four, in 256 bits.</summary>
    Four,

    /// <summary>Eight, in 512 bits.</summary>
    Eight,
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
