using AxisSim.Core.Bounds;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Payloads;

/// <summary>Inertia and gravity torque of a payload about both axes, from its bodies or from lumped figures.</summary>
/// <remarks>
/// <para>Law: torque about an axis = sum over bodies of <c>(r x m g) . axis</c>, which for rigid bodies is minus the derivative of the
/// potential energy <c>U = g (Mo z(Out) + Mf z(Forward) + Ms z(Side))</c>, with Mo, Mf, Ms the first moments (kg m) in the tube frame and z(.)
/// the height of each unit vector as <see cref="MountPose"/> gives it. With c = cos(latitude), s = |sin(latitude)|, h = +1 north, -1 south:</para>
/// <para>U/g = -Mo c sin p + Mf (c cos d cos p + s sin d) + h Ms (s cos d - c sin d cos p);</para>
/// <para>polar torque = g c [Mo cos p + Mf cos d sin p - h Ms sin d sin p];</para>
/// <para>declination torque = g [Mf (c sin d cos p - s cos d) + h Ms (s sin d + c cos d cos p)].</para>
/// <para>h enters because Side = Out x Forward is right-handed in both hemispheres, while the declination angle grows towards
/// the elevated pole: at d = 0 Side points at that pole in the north and away from it in the south.</para>
/// <para>Polar inertia: u . I u with I the tensor of all bodies about the origin and u = Forward sin d + h Side cos d (the polar axis
/// in the tube frame). Validity: rigid bodies; the two axes meet at right angles; the polar axis is aimed at the pole.</para>
/// </remarks>
public static class MountLoadBuilder
{
    /// <summary>The load of bodies and counterweight at a latitude (rad, south negative).</summary>
    /// <exception cref="ArgumentException">A body or the counterweight will not do (<see cref="PayloadChecks"/>); the message lists all problems.</exception>
    public static MountLoad FromBodies(PayloadModel payload, double latitudeRadians)
    {
        Refuse(PayloadChecks.Problems(payload), nameof(payload));
        return LawOf(payload, latitudeRadians);
    }

    /// <summary>The law alone, for bodies that have been checked.</summary>
    internal static MountLoad LawOf(PayloadModel payload, double latitudeRadians)
    {
        FirstMoments moments = FirstMoments.Of(payload);
        InertiaTensor tensor = payload.Bodies.Aggregate(default(InertiaTensor), (sum, body) => sum + BodyInertia.AboutOrigin(body));
        double barOut = 0.0;
        if (payload.Counterweight is { } weight)
        {
            InertiaTensor weights = BodyInertia.Round(weight.MassKilograms, weight.LengthMetres, weight.DiameterMetres, 0.0, BodyDirection.Out)
                .Shifted(weight.MassKilograms, -weight.DistanceMetres, 0.0, 0.0);
            if (!weight.TurnsWithDeclination)
            {
                weights = weights with { OutOut = 0.0 };
            }

            tensor += weights;
            barOut = weight.BarMassKilograms * weight.BarLengthMetres * weight.BarLengthMetres / 3.0;
        }

        double hand = Hand(latitudeRadians);
        return new MountLoad
        {
            PolarGravity = PolarGravity(moments, latitudeRadians),
            DeclinationGravity = DeclinationGravity(moments, latitudeRadians),
            PolarInertia =
            [
                ((tensor.ForwardForward + tensor.SideSide) / 2.0) + barOut,
                0.0,
                0.0,
                (tensor.SideSide - tensor.ForwardForward) / 2.0,
                hand * tensor.ForwardSide,
            ],
            DeclinationInertiaKilogramSquareMetres = tensor.OutOut,
        };
    }

    /// <summary>The load of lumped figures at a latitude (rad, south negative); an axis without figures gets none.</summary>
    /// <exception cref="ArgumentException">A figure will not do (<see cref="PayloadChecks"/>).</exception>
    /// <remarks>See <see cref="LumpedLoad"/> for the law of each axis. The phase of the declination axis grows as its angle does, in both hemispheres.</remarks>
    public static MountLoad FromLumped(LumpedLoad? polar, LumpedLoad? declination, double latitudeRadians)
    {
        Refuse(polar is null ? [] : PayloadChecks.Problems(polar), nameof(polar));
        Refuse(declination is null ? [] : PayloadChecks.Problems(declination), nameof(declination));
        double[] polarGravity = new double[6];
        if (polar is not null)
        {
            (double sin, double cos) = Math.SinCos(polar.PhaseRadians);
            double torque = polar.ImbalanceNewtonMetres * Math.Cos(latitudeRadians);
            polarGravity[0] = torque * sin;
            polarGravity[1] = torque * cos;
        }

        IReadOnlyList<double> declinationGravity = new double[6];
        if (declination is not null)
        {
            (double sin, double cos) = Math.SinCos(declination.PhaseRadians);
            double moment = declination.ImbalanceNewtonMetres / StandardGravity.MetresPerSecondSquared;
            declinationGravity = DeclinationGravity(new(0.0, moment * cos, Hand(latitudeRadians) * moment * sin), latitudeRadians);
        }

        return new MountLoad
        {
            PolarGravity = polarGravity,
            DeclinationGravity = declinationGravity,
            PolarInertia = [polar?.InertiaKilogramSquareMetres ?? 0.0, 0.0, 0.0, 0.0, 0.0],
            DeclinationInertiaKilogramSquareMetres = declination?.InertiaKilogramSquareMetres ?? 0.0,
        };
    }

    private static double[] PolarGravity(FirstMoments moments, double latitude)
    {
        double across = StandardGravity.MetresPerSecondSquared * Math.Cos(latitude);
        return [across * moments.Out, 0.0, 0.0, across * moments.Forward, 0.0, -Hand(latitude) * across * moments.Side];
    }

    private static double[] DeclinationGravity(FirstMoments moments, double latitude)
    {
        double across = StandardGravity.MetresPerSecondSquared * Math.Cos(latitude);
        double along = StandardGravity.MetresPerSecondSquared * Math.Abs(Math.Sin(latitude));
        double side = Hand(latitude) * moments.Side;
        return [-along * moments.Forward, across * side, 0.0, along * side, across * moments.Forward, 0.0];
    }

    private static void Refuse(IReadOnlyList<SetupProblem> problems, string argument) => SetupProblem.Throw(problems, argument, "this load cannot be:");

    private static double Hand(double latitude) => latitude < 0.0 ? -1.0 : 1.0;
}
