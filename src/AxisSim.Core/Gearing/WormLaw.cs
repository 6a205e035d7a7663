namespace AxisSim.Core.Gearing;

/// <summary>Friction of a worm mesh or a screw thread: efficiency in both directions, self-locking, force ratio.</summary>
/// <remarks>
/// <para>Symbols: L lead angle at the pitch cylinder (rad, above 0), f friction coefficient of the flanks, pn normal pressure angle (rad;
/// for a screw half the thread angle, 0 for a square thread).</para>
/// <para>Both are a wedge pushed along its flank. Force around the worm over force along it:
/// driving <c>(cos pn tan L + f)/(cos pn - f tan L)</c>; back-driving, friction reversed, <c>(cos pn tan L - f)/(cos pn + f tan L)</c>.
/// Without friction both are <c>tan L</c>; so the efficiencies are</para>
/// <para><c>e = (cos pn - f tan L)/(cos pn + f cot L)</c> with the worm driving (Carvill, Mechanical Engineer's Data Handbook, 2.10.6;
/// Shigley, Mechanical Engineering Design, worm gearing), and <c>eb = (cos pn - f cot L)/(cos pn + f tan L)</c> with the wheel driving.
/// Self-locking when <c>f &gt;= cos pn tan L</c>, that is eb zero or below.</para>
/// <para>Efficiency is power out over power in; a negative eb says how much torque the worm must be helped with. Valid
/// for Coulomb friction with one coefficient; bearing and churning losses are not in it.</para>
/// </remarks>
public static class WormLaw
{
    /// <summary>Efficiency with the worm driving, 0 to 1 (0 or below: friction too great to be driven at all).</summary>
    public static double DrivingEfficiency(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians) =>
        Math.Tan(leadAngleRadians) / DrivingForceRatio(leadAngleRadians, frictionCoefficient, pressureAngleRadians);

    /// <summary>Efficiency with the wheel driving; zero or negative when the worm locks itself.</summary>
    public static double BackDrivingEfficiency(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians) =>
        BackDrivingForceRatio(leadAngleRadians, frictionCoefficient, pressureAngleRadians) / Math.Tan(leadAngleRadians);

    /// <summary>Whether the wheel cannot turn the worm.</summary>
    public static bool IsSelfLocking(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians) =>
        frictionCoefficient >= Math.Cos(pressureAngleRadians) * Math.Tan(leadAngleRadians);

    /// <summary>Greatest lead angle at which the worm still locks itself, rad: <c>atan(f/cos pn)</c>.</summary>
    public static double SelfLockingLeadAngle(double frictionCoefficient, double pressureAngleRadians) =>
        Math.Atan(frictionCoefficient / Math.Cos(pressureAngleRadians));

    /// <summary>Force around the worm over the force along it (the wheel's tangential force) with the worm driving.</summary>
    public static double DrivingForceRatio(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians)
    {
        double tangent = Math.Tan(leadAngleRadians);
        double cosine = Math.Cos(pressureAngleRadians);
        return ((cosine * tangent) + frictionCoefficient) / (cosine - (frictionCoefficient * tangent));
    }

    /// <summary>Force around the worm over the force along it with the wheel driving; negative when the worm must be helped.</summary>
    public static double BackDrivingForceRatio(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians)
    {
        double tangent = Math.Tan(leadAngleRadians);
        double cosine = Math.Cos(pressureAngleRadians);
        return ((cosine * tangent) - frictionCoefficient) / (cosine + (frictionCoefficient * tangent));
    }
}
