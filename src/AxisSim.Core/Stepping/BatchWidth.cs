namespace AxisSim.Core.Stepping;

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
