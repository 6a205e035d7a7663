namespace AxisSim.Core.Sky;

/// <summary>Standard acceleration of gravity.</summary>
/// <remarks>
/// <c>g_n = 9.80665 m/s2</c>, exact by definition (3rd CGPM, 1901; CODATA). Gravity at a site differs from it by up to 0.3 %,
/// which is less than payload masses are usually known to.
/// </remarks>
public static class StandardGravity
{
    /// <summary><c>g_n</c>, m/s2.</summary>
    public const double MetresPerSecondSquared = 9.80665;
}
