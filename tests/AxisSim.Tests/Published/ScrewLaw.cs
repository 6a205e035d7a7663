using AxisSim.Core.Gearing;

namespace AxisSim.Tests.Published;

/// <summary>Torque of a power screw, by the same wedge law as the worm: published screw examples check that law.</summary>
/// <remarks>
/// <c>T = F (dm/2) ratio + F fc dc/2</c> with F load (N), dm mean thread diameter (m), the force ratios of <see cref="WormLaw"/>,
/// fc and dc friction coefficient and mean diameter of the thrust collar. Source: Shigley, Mechanical Engineering Design, power screws.
/// </remarks>
/// <param name="MeanDiameterMetres">dm, m.</param>
/// <param name="LeadMetres">Lead, m.</param>
/// <param name="FrictionCoefficient">Of the thread.</param>
/// <param name="HalfThreadAngleRadians">Half the thread angle, rad; 0 for a square thread.</param>
/// <param name="CollarFrictionCoefficient">Of the collar; 0 when it runs on rollers.</param>
/// <param name="CollarDiameterMetres">dc, m.</param>
internal readonly record struct ScrewLaw(
    double MeanDiameterMetres,
    double LeadMetres,
    double FrictionCoefficient,
    double HalfThreadAngleRadians = 0.0,
    double CollarFrictionCoefficient = 0.0,
    double CollarDiameterMetres = 0.0)
{
    /// <summary>Lead angle, rad.</summary>
    public double LeadAngleRadians => WormGeometry.LeadAngle(LeadMetres, MeanDiameterMetres);

    /// <summary>Torque of the thread alone to raise a load, N m.</summary>
    public double RaisingThreadTorque(double loadNewtons) =>
        loadNewtons * MeanDiameterMetres / 2.0 * WormLaw.DrivingForceRatio(LeadAngleRadians, FrictionCoefficient, HalfThreadAngleRadians);

    /// <summary>Torque of the thread alone to lower a load, N m; negative when the load runs down by itself.</summary>
    public double LoweringThreadTorque(double loadNewtons) =>
        -loadNewtons * MeanDiameterMetres / 2.0 * WormLaw.BackDrivingForceRatio(LeadAngleRadians, FrictionCoefficient, HalfThreadAngleRadians);

    /// <summary>Torque of the collar, N m.</summary>
    public double CollarTorque(double loadNewtons) => loadNewtons * CollarFrictionCoefficient * CollarDiameterMetres / 2.0;

    /// <summary>Work of raising over work of turning, collar included.</summary>
    public double RaisingEfficiency => LeadMetres / (2.0 * Math.PI * (RaisingThreadTorque(1.0) + CollarTorque(1.0)));
}
