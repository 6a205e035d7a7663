namespace AxisSim.Core.Gearing;

/// <summary>Friction of a worm mesh: efficiency in both directions, self-locking, and tooth forces.</summary>
/// <remarks>
/// <para>Symbols: L lead angle at the worm's pitch cylinder (rad, above 0), f friction coefficient of the flanks, pn normal pressure angle (rad).</para>
/// <para>Driving (worm turns wheel): <c>e = (cos pn - f tan L)/(cos pn + f cot L)</c> (Carvill, Mechanical Engineer's Data Handbook,
/// 2.10.6; Shigley, Mechanical Engineering Design, worm gearing). Back-driving (wheel turns worm), friction reversed:
/// <c>eb = (cos pn - f cot L)/(cos pn + f tan L)</c>; zero or below it the wheel cannot turn the worm.
/// Self-locking when <c>f &gt;= cos pn tan L</c>.</para>
/// <para>Both are ratios of power out to power in; a negative eb says how much torque the worm must be helped with. Valid
/// for Coulomb friction with one coefficient; bearing and churning losses are not in it.</para>
/// </remarks>
public static class WormLaw
{
    /// <summary>Efficiency with the worm driving, 0 to 1 (0 or below: friction too great to be driven at all).</summary>
    public static double DrivingEfficiency(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians)
    {
        double tangent = Math.Tan(leadAngleRadians);
        double cosine = Math.Cos(pressureAngleRadians);
        return (cosine - (frictionCoefficient * tangent)) / (cosine + (frictionCoefficient / tangent));
    }

    /// <summary>Efficiency with the wheel driving; zero or negative when the worm locks itself.</summary>
    public static double BackDrivingEfficiency(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians)
    {
        double tangent = Math.Tan(leadAngleRadians);
        double cosine = Math.Cos(pressureAngleRadians);
        return (cosine - (frictionCoefficient / tangent)) / (cosine + (frictionCoefficient * tangent));
    }

    /// <summary>Whether the wheel cannot turn the worm.</summary>
    public static bool IsSelfLocking(double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians) =>
        frictionCoefficient >= Math.Cos(pressureAngleRadians) * Math.Tan(leadAngleRadians);

    /// <summary>Greatest lead angle at which the worm still locks itself, rad: <c>atan(f/cos pn)</c>.</summary>
    public static double SelfLockingLeadAngle(double frictionCoefficient, double pressureAngleRadians) =>
        Math.Atan(frictionCoefficient / Math.Cos(pressureAngleRadians));
}
