using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Finds the imbalance of a payload over all poses, and where counterweight and payload should go.</summary>
/// <remarks>
/// <para>With the first moments Mo, Mf, Ms (kg m) along Out, Forward and Side and the torques of <see cref="MountLoadBuilder"/>:
/// the polar torque over p has the amplitude <c>g cos(latitude) sqrt(Mo2 + (Mf cos d - h Ms sin d)2)</c>, over all poses
/// <c>g cos(latitude) sqrt(Mo2 + Mf2 + Ms2)</c>; the declination torque reaches <c>g sqrt(Mf2 + Ms2)</c> where its axis is level
/// (p = 0). So the counterweight cures Mo, and only shifting the payload cures the rest.</para>
/// <para>Weights are moved as points on their bar: neither their length nor a stop at the inner end of the bar is looked at.</para>
/// </remarks>
public static class BalanceStudy
{
    private const double G = StandardGravity.MetresPerSecondSquared;

    // A counterweight is not set by hand more finely than this, m.
    private const double SettingMetres = 1e-4;

    /// <summary>Studies a payload at a latitude (rad, south negative), on a grid of so many steps in a full turn of each axis.</summary>
    public static BalanceReport Run(PayloadModel payload, double latitudeRadians, int gridSteps = 24)
    {
        ArgumentNullException.ThrowIfNull(payload);
        ArgumentOutOfRangeException.ThrowIfLessThan(gridSteps, 1);
        MountLoad load = MountLoadBuilder.FromBodies(payload, latitudeRadians);
        FirstMoments moments = FirstMoments.Of(payload);
        double across = G * Math.Cos(latitudeRadians);
        CounterweightAdvice advice = Advise(payload, moments, across);
        PayloadShift shift = Shift(payload, moments);
        PayloadModel balanced = Apply(payload, advice, shift);
        MountLoad after = MountLoadBuilder.FromBodies(balanced, latitudeRadians);
        return new BalanceReport
        {
            Grid = Grid(load, gridSteps),
            Polar = WorstPolar(load, moments, latitudeRadians),
            Declination = WorstDeclination(load, moments, latitudeRadians),
            PolarFromCounterweightNewtonMetres = across * Math.Abs(moments.Out),
            PolarFromTubeNewtonMetres = across * Tube(moments),
            Counterweight = advice,
            Shift = shift,
            Balanced = balanced,
            RemainingPolarNewtonMetres = WorstPolar(after, FirstMoments.Of(balanced), latitudeRadians).NewtonMetres,
            RemainingDeclinationNewtonMetres = WorstDeclination(after, FirstMoments.Of(balanced), latitudeRadians).NewtonMetres,
            PolarInertiaKilogramSquareMetres = (load.Inertia(MountAxis.Polar, 0.0), after.Inertia(MountAxis.Polar, 0.0)),
        };
    }

    private static double Tube(FirstMoments moments) => Math.Sqrt((moments.Forward * moments.Forward) + (moments.Side * moments.Side));

    private static double Hand(double latitude) => latitude < 0.0 ? -1.0 : 1.0;

    private static PoseTorque[] Grid(MountLoad load, int steps) =>
    [
        .. from i in Enumerable.Range(0, steps)
           from j in Enumerable.Range(0, steps)
           let pose = new MountPose((2.0 * Math.PI * i / steps) - Math.PI, (2.0 * Math.PI * j / steps) - Math.PI)
           select new PoseTorque(pose, load.GravityTorque(MountAxis.Polar, pose), load.GravityTorque(MountAxis.Declination, pose)),
    ];

    private static WorstImbalance WorstPolar(MountLoad load, FirstMoments moments, double latitude)
    {
        // The declination that turns the tube's whole moment across the polar axis, then the polar angle at which all of it is level.
        double declination = Math.Atan2(-Hand(latitude) * moments.Side, moments.Forward);
        MountPose pose = new(Math.Atan2(Tube(moments), moments.Out), declination);
        return new(MountAxis.Polar, pose, Math.Abs(load.GravityTorque(MountAxis.Polar, pose)));
    }

    private static WorstImbalance WorstDeclination(MountLoad load, FirstMoments moments, double latitude)
    {
        // At p = 0: g [Mf sin(d - phi) + h Ms cos(d - phi)], phi the elevation of the pole.
        double declination = Math.Abs(latitude) + Math.Atan2(moments.Forward, Hand(latitude) * moments.Side);
        MountPose pose = new(0.0, Math.IEEERemainder(declination, 2.0 * Math.PI));
        return new(MountAxis.Declination, pose, Math.Abs(load.GravityTorque(MountAxis.Declination, pose)));
    }

    private static CounterweightAdvice Advise(PayloadModel payload, FirstMoments moments, double across)
    {
        if (payload.Counterweight is not { } weight)
        {
            CounterweightAction none = moments.Out > 0.0 ? CounterweightAction.Provide : CounterweightAction.Keep;
            return new(none, moments.Out, double.NaN, double.NaN, across * Math.Abs(moments.Out));
        }

        double needed = moments.Out + (weight.MassKilograms * weight.DistanceMetres);
        if (needed <= 0.0)
        {
            return new(CounterweightAction.Remove, needed, weight.DistanceMetres, 0.0, across * -needed);
        }

        double reach = weight.GreatestDistanceMetres ?? double.PositiveInfinity;
        double distance = needed / weight.MassKilograms;
        if (double.IsPositiveInfinity(distance) && double.IsPositiveInfinity(reach))
        {
            // A bar without weights and without a known end: only the moment can be named.
            return new(CounterweightAction.Provide, needed, weight.DistanceMetres, weight.MassKilograms, across * needed);
        }

        if (distance > reach)
        {
            return new(CounterweightAction.AddMass, needed, reach, needed / reach, across * (needed - (weight.MassKilograms * reach)));
        }

        bool there = Math.Abs(distance - weight.DistanceMetres) <= SettingMetres;
        return there
            ? new(CounterweightAction.Keep, needed, weight.DistanceMetres, weight.MassKilograms, across * Math.Abs(moments.Out))
            : new(CounterweightAction.Move, needed, distance, weight.MassKilograms, 0.0);
    }

    private static PayloadShift Shift(PayloadModel payload, FirstMoments moments)
    {
        double mass = payload.Bodies.Sum(body => body.MassKilograms);
        return mass > 0.0
            ? new(-moments.Forward / mass, -moments.Side / mass, G * Math.Abs(moments.Side))
            : new(0.0, 0.0, 0.0);
    }

    private static PayloadModel Apply(PayloadModel payload, CounterweightAdvice advice, PayloadShift shift) => new()
    {
        Bodies =
        [
            .. payload.Bodies.Select(body => body with
            {
                ForwardMetres = body.ForwardMetres + shift.ForwardMetres,
                SideMetres = body.SideMetres + shift.SideMetres,
            }),
        ],
        Counterweight = payload.Counterweight is { } weight
            ? weight with { DistanceMetres = advice.DistanceMetres, MassKilograms = advice.MassKilograms }
            : null,
    };
}
