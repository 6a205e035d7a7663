namespace AxisSim.Core.Dynamics;

/// <summary>Friction torque of a rolling bearing, estimated.</summary>
/// <remarks>
/// <c>M = 0.5 mu F d</c>: mu friction coefficient (about 0.0015 for deep-groove balls to 0.002 for angular contact), F load (N),
/// d bore (m). Bearing makers' rule for normal lubrication and a load near a tenth of the dynamic rating; without seals, and up to
/// twice that at starting.
/// </remarks>
public static class BearingLaw
{
    /// <summary>Friction torque, N m.</summary>
    public static double FrictionTorque(double frictionCoefficient, double loadNewtons, double boreMetres) =>
        0.5 * frictionCoefficient * loadNewtons * boreMetres;
}
