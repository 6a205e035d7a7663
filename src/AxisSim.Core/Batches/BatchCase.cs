using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Batches;

/// <summary>One move of one axis, to be run among many.</summary>
/// <param name="Setup">The mount and its move.</param>
/// <param name="Axis">The axis that is simulated; the other follows its plan.</param>
public sealed record BatchCase(MountSetup Setup, MountAxis Axis)
{
    /// <summary>How much of this one is wanted; null as of all of its batch.</summary>
    public BatchDepth? Depth { get; init; }
}
