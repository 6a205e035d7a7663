namespace AxisSim.Core.Stepping.Jobs;

/// <summary>Numbers that the step takes alike for one axis and for a vector of them.</summary>
internal static class LaneLimits
{
    /// <summary>Steps in a block; they share the slow terms and the checks.</summary>
    public const int BlockSteps = 16;

    /// <summary>Load angle beyond which sync is lost for good, full steps: past the unstable point (2) half-way to the next stable one (4).</summary>
    public const double LostFullSteps = 3.0;
}
