namespace AxisSim.Core.Outcomes;

/// <summary>Pull-out torque at one motor speed: the range of loads between keeping sync always and never.</summary>
/// <remarks>
/// A motor that loses step at one definite load has both alike, to 0.5 %. Where it depends on the phase of a small disturbance, on what the motor did before, or where it swings
/// itself out of step at a light load and holds a greater one, they lie apart.
/// </remarks>
/// <param name="LeastNewtonMetres">Every smaller load keeps sync, N m at the shaft, net of the motor's own friction; 0 where even the bearings alone do not.</param>
/// <param name="GreatestNewtonMetres">No greater load keeps sync, N m.</param>
public readonly record struct PullOutTorque(double LeastNewtonMetres, double GreatestNewtonMetres)
{
    /// <summary>Share of the greatest by which the least lies below it from which on the two are told apart.</summary>
    public const double BandShare = 0.03;

    /// <summary>Whether the range is a band, not one value.</summary>
    public bool IsBand => GreatestNewtonMetres - LeastNewtonMetres > BandShare * GreatestNewtonMetres;
}
