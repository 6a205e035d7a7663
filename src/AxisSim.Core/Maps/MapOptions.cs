using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Maps;

/// <summary>What to compute of a map, and how.</summary>
public sealed record MapOptions
{
    /// <summary>The axes that a cell is judged by.</summary>
    public required IReadOnlyList<MountAxis> Axes { get; init; }

    /// <summary>The setup of a place, null where its values are not valid together; called from several threads at once.</summary>
    public required Func<int, MountSetup?> Setup { get; init; }

    /// <summary>Whether the user's own point is computed too.</summary>
    public bool HasOwnPoint { get; init; }

    /// <summary>Compute every cell instead of refining along the edges; always so where more than the end of a cell matters.</summary>
    public bool Full { get; init; }

    /// <summary>Which columns are computed: those whose number leaves this remainder ...</summary>
    public int ShardIndex { get; init; }

    /// <summary>... when divided by this.</summary>
    public int ShardCount { get; init; } = 1;

    /// <summary>Step asked for, s.</summary>
    public double StepSeconds { get; init; } = StepChoice.DefaultSeconds;

    /// <summary>Threads; 0 takes as many as there are cores. The results do not depend on it.</summary>
    public int Threads { get; init; }

    /// <summary>Called with each place and its result as it is done, one at a time.</summary>
    public Action<int, CellResult>? Finished { get; init; }

    /// <summary>Called with the round of refinement, the cells done in it and those that it has.</summary>
    public Action<int, int, int>? Progress { get; init; }

    /// <summary>Ends the work early; what was finished has been reported.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>What runs a batch; tests put another in its place.</summary>
    internal Func<IReadOnlyList<BatchCase>, BatchOptions, BatchResult[]> Engine { get; init; } = BatchStudy.RunUnchecked;
}
