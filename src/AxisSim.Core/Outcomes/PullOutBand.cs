namespace AxisSim.Core.Outcomes;

/// <summary>Motor speeds at which the load that makes a motor lose step is not one value: it swings itself out of step, or may.</summary>
/// <param name="FullStepping">Full-stepping, or microstepping.</param>
/// <param name="FromRadiansPerSecond">Lower end, rad/s.</param>
/// <param name="ToRadiansPerSecond">Upper end, rad/s.</param>
/// <param name="LeastNewtonMetres">Least of the band, N m; 0 where even the bearings alone do not keep sync.</param>
/// <param name="GreatestNewtonMetres">Greatest of the band, N m.</param>
public sealed record PullOutBand(bool FullStepping, double FromRadiansPerSecond, double ToRadiansPerSecond, double LeastNewtonMetres, double GreatestNewtonMetres)
{
    /// <summary>Whether even the bearings alone may be too much somewhere in it.</summary>
    public bool IsNothingSure => LeastNewtonMetres <= 0.0;

    /// <summary>Whether a drive is in the band's mode at some of its speeds.</summary>
    /// <param name="changeoverRadiansPerSecond">Changeover of the drive, rad/s; infinite when it always microsteps.</param>
    public bool IsMet(double changeoverRadiansPerSecond) =>
        FullStepping ? ToRadiansPerSecond > changeoverRadiansPerSecond : FromRadiansPerSecond < changeoverRadiansPerSecond;
}
