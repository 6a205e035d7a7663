namespace AxisSim.Core.Gearing;

/// <summary>The reduction at which a motor's torque accelerates its load fastest.</summary>
/// <remarks>
/// Acceleration of the load <c>a(n) = (n Tm - TL)/(n2 Jm + JL)</c>, with Tm motor torque (N m), Jm motor inertia and JL load inertia
/// (kg m2), TL opposing load torque at the load (N m), n reduction. It is greatest at
/// <c>n = TL/Tm + sqrt((TL/Tm)2 + JL/Jm)</c>; without load torque at <c>sqrt(JL/Jm)</c>, where the reflected inertia equals the motor's
/// (Petersen, Trans. ASME 76 (1954) 493). Valid for a lossless gear without inertia of its own and a motor torque that does not fall with speed.
/// </remarks>
public static class InertiaMatch
{
    /// <summary>Reduction of greatest acceleration.</summary>
    public static double OptimumRatio(double loadInertia, double motorInertia, double loadTorque = 0.0, double motorTorque = 1.0)
    {
        double torqueRatio = loadTorque / motorTorque;
        return torqueRatio + Math.Sqrt((torqueRatio * torqueRatio) + (loadInertia / motorInertia));
    }

    /// <summary>Acceleration of the load at a reduction, rad/s2.</summary>
    public static double LoadAcceleration(double ratio, double loadInertia, double motorInertia, double loadTorque, double motorTorque) =>
        ((ratio * motorTorque) - loadTorque) / ((ratio * ratio * motorInertia) + loadInertia);
}
