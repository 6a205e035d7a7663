using AxisSim.Core.Sky;

namespace AxisSim.Core.Payloads;

/// <summary>Inertia and gravity torque of everything that turns, about both axes and at any pose.</summary>
/// <remarks>
/// <para>Symbols: p polar angle, d declination angle (rad). A rigid payload on a German equatorial mount gives exactly</para>
/// <para>polar gravity torque = sum over i, j of P[i,j] u_i(d) v_j(p) with u = (1, cos d, sin d), v = (cos p, sin p), N m;</para>
/// <para>declination gravity torque = sum over i, j of D[i,j] u_i(d) v_j(p) with u = (cos d, sin d), v = (1, cos p, sin p), N m;</para>
/// <para>polar inertia = sum over i of J[i] w_i(d) with w = (1, cos d, sin d, cos 2d, sin 2d), kg m2; declination inertia is constant.</para>
/// <para>A positive torque turns its axis towards greater angles.</para>
/// </remarks>
public sealed record MountLoad
{
    /// <summary>P, row by row: [1 cos p, 1 sin p, cos d cos p, cos d sin p, sin d cos p, sin d sin p], N m.</summary>
    public required IReadOnlyList<double> PolarGravity { get; init; }

    /// <summary>D, row by row: [cos d, cos d cos p, cos d sin p, sin d, sin d cos p, sin d sin p], N m.</summary>
    public required IReadOnlyList<double> DeclinationGravity { get; init; }

    /// <summary>J: [1, cos d, sin d, cos 2d, sin 2d], kg m2.</summary>
    public required IReadOnlyList<double> PolarInertia { get; init; }

    /// <summary>Inertia about the declination axis, kg m2.</summary>
    public required double DeclinationInertiaKilogramSquareMetres { get; init; }

    /// <summary>Gravity torque about an axis at a pose, N m.</summary>
    public double GravityTorque(MountAxis axis, MountPose pose)
    {
        (double sp, double cp) = Math.SinCos(pose.PolarRadians);
        (double sd, double cd) = Math.SinCos(pose.DeclinationRadians);
        if (axis == MountAxis.Polar)
        {
            IReadOnlyList<double> k = PolarGravity;
            return (cp * (k[0] + (k[2] * cd) + (k[4] * sd))) + (sp * (k[1] + (k[3] * cd) + (k[5] * sd)));
        }

        IReadOnlyList<double> q = DeclinationGravity;
        return (cd * (q[0] + (q[1] * cp) + (q[2] * sp))) + (sd * (q[3] + (q[4] * cp) + (q[5] * sp)));
    }

    /// <summary>Inertia about an axis at a declination angle, kg m2.</summary>
    public double Inertia(MountAxis axis, double declinationRadians)
    {
        if (axis == MountAxis.Declination)
        {
            return DeclinationInertiaKilogramSquareMetres;
        }

        (double s, double c) = Math.SinCos(declinationRadians);
        (double s2, double c2) = Math.SinCos(2.0 * declinationRadians);
        IReadOnlyList<double> j = PolarInertia;
        return j[0] + (j[1] * c) + (j[2] * s) + (j[3] * c2) + (j[4] * s2);
    }

    /// <summary>Derivative of the polar inertia with the declination angle, kg m2/rad.</summary>
    public double PolarInertiaSlope(double declinationRadians)
    {
        (double s, double c) = Math.SinCos(declinationRadians);
        (double s2, double c2) = Math.SinCos(2.0 * declinationRadians);
        IReadOnlyList<double> j = PolarInertia;
        return (-j[1] * s) + (j[2] * c) - (2.0 * j[3] * s2) + (2.0 * j[4] * c2);
    }

    /// <summary>The same load with all inertias times one factor and all gravity torques times another.</summary>
    public MountLoad Scaled(double inertiaFactor, double gravityFactor) => new()
    {
        PolarGravity = [.. PolarGravity.Select(x => x * gravityFactor)],
        DeclinationGravity = [.. DeclinationGravity.Select(x => x * gravityFactor)],
        PolarInertia = [.. PolarInertia.Select(x => x * inertiaFactor)],
        DeclinationInertiaKilogramSquareMetres = DeclinationInertiaKilogramSquareMetres * inertiaFactor,
    };
}
