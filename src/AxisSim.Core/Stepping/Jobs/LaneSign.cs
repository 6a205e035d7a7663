namespace AxisSim.Core.Stepping.Jobs;

/// <summary>What a block showed of a vector.</summary>
internal enum LaneSign
{
    /// <summary>It goes on.</summary>
    None,

    /// <summary>Some lane has lost sync, slips, or is no number any more.</summary>
    Attention,

    /// <summary>The block has changed nothing in any lane.</summary>
    Rests,
}
