using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using MathNet.Numerics.Integration;

namespace AxisSim.Tests.Unit.Core.Payloads;

/// <summary>A payload cut into point masses and turned in space, in the local frame East, North, Up: the slow, plain way to its loads.</summary>
/// <remarks>
/// Each body is a product grid whose sums of mass, first and second moments are those of the solid: Gauss points (order 2 is exact to
/// third powers) along straight edges, and rings at the radius of gyration with eight equal angles (exact to seventh powers).
/// </remarks>
internal sealed class PointCloud
{
    private readonly List<(double Mass, Vector At, bool TurnsWithDeclination)> points = [];
    private readonly Vector polarAxis;
    private readonly Vector declinationAxis;

    private PointCloud(double latitude, MountPose pose)
    {
        // Elevated pole, and the sense in which angles grow about the two axes as right-handed axes of rotation.
        double hand = latitude < 0.0 ? -1.0 : 1.0;
        Vector pole = new(0.0, hand * Math.Cos(latitude), Math.Abs(Math.Sin(latitude)));
        polarAxis = pole * -hand;
        Pole = pole;
        Vector west = new(-1.0, 0.0, 0.0);
        Vector meridian = new(0.0, -hand * Math.Abs(Math.Sin(latitude)), Math.Cos(latitude));
        Out = west.Turned(polarAxis, pose.PolarRadians);
        declinationAxis = Out * hand;
        Forward = meridian.Turned(polarAxis, pose.PolarRadians).Turned(declinationAxis, pose.DeclinationRadians);
        Side = Out.Cross(Forward);
    }

    public Vector Pole { get; }

    public Vector Out { get; }

    public Vector Forward { get; }

    public Vector Side { get; }

    public double PotentialEnergy => points.Sum(p => p.Mass * StandardGravity.MetresPerSecondSquared * p.At.Z);

    public double TorqueScale => points.Sum(p => p.Mass * StandardGravity.MetresPerSecondSquared * p.At.Length);

    public double InertiaScale => points.Sum(p => p.Mass * p.At.Dot(p.At));

    public static PointCloud Of(PayloadModel payload, double latitude, MountPose pose)
    {
        PointCloud cloud = new(latitude, pose);
        foreach (PayloadBody body in payload.Bodies)
        {
            cloud.Add(body, true);
        }

        if (payload.Counterweight is { } w)
        {
            cloud.Add(
                new()
                {
                    Name = "weights",
                    Shape = BodyShape.Cylinder,
                    Direction = BodyDirection.Out,
                    MassKilograms = w.MassKilograms,
                    OutMetres = -w.DistanceMetres,
                    LengthMetres = w.LengthMetres,
                    DiameterMetres = w.DiameterMetres,
                },
                w.TurnsWithDeclination);
            cloud.Add(
                new()
                {
                    Name = "bar",
                    Shape = BodyShape.Cylinder,
                    Direction = BodyDirection.Out,
                    MassKilograms = w.BarMassKilograms,
                    OutMetres = -w.BarLengthMetres / 2.0,
                    LengthMetres = w.BarLengthMetres,
                },
                w.TurnsWithDeclination);
        }

        return cloud;
    }

    /// <summary>tau = sum (r x m g) . axis.</summary>
    public double GravityTorque(MountAxis axis)
    {
        Vector down = new(0.0, 0.0, -StandardGravity.MetresPerSecondSquared);
        return axis == MountAxis.Polar
            ? points.Sum(p => p.At.Cross(down * p.Mass).Dot(polarAxis))
            : points.Where(p => p.TurnsWithDeclination).Sum(p => p.At.Cross(down * p.Mass).Dot(declinationAxis));
    }

    /// <summary>J = sum m |r x axis|2.</summary>
    public double Inertia(MountAxis axis)
    {
        Vector about = axis == MountAxis.Polar ? polarAxis : declinationAxis;
        return points.Where(p => axis == MountAxis.Polar || p.TurnsWithDeclination).Sum(p => p.Mass * p.At.Cross(about).Dot(p.At.Cross(about)));
    }

    private static IEnumerable<(double Share, double X)> Along(double length)
    {
        GaussLegendreRule rule = new(-length / 2.0, length / 2.0, 2);
        return length == 0.0 ? [(1.0, 0.0)] : Enumerable.Range(0, 2).Select(i => (rule.GetWeight(i) / length, rule.GetAbscissa(i)));
    }

    private static IEnumerable<(double Share, double X, double Y)> Around(double outer, double inner)
    {
        double gyration = Math.Sqrt(((outer * outer) + (inner * inner)) / 8.0);
        return Enumerable.Range(0, 8).Select(i => (1.0 / 8.0, gyration * Math.Cos(i * Math.PI / 4.0), gyration * Math.Sin(i * Math.PI / 4.0)));
    }

    private void Add(PayloadBody body, bool turns)
    {
        IEnumerable<(double Share, double X, double Y)> across = body.Shape switch
        {
            BodyShape.Point => [(1.0, 0.0, 0.0)],
            BodyShape.Cylinder => Around(body.DiameterMetres, 0.0),
            BodyShape.Tube => Around(body.DiameterMetres, body.InnerDiameterMetres),
            _ => from a in Along(body.WidthMetres) from b in Along(body.HeightMetres) select (a.Share * b.Share, a.X, b.X),
        };
        IEnumerable<(double Share, double X)> along = body.Shape == BodyShape.Point ? [(1.0, 0.0)] : Along(body.LengthMetres);
        foreach ((double shareAlong, double l) in along)
        {
            foreach ((double shareAcross, double x, double y) in across)
            {
                (double o, double f, double s) = body.Direction switch
                {
                    BodyDirection.Out => (l, x, y),
                    BodyDirection.Forward => (x, l, y),
                    _ => (x, y, l),
                };
                Vector at = (Out * (body.OutMetres + o)) + (Forward * (body.ForwardMetres + f)) + (Side * (body.SideMetres + s));
                points.Add((body.MassKilograms * shareAlong * shareAcross, at, turns));
            }
        }
    }

    internal readonly record struct Vector(double X, double Y, double Z)
    {
        public double Length => Math.Sqrt(Dot(this));

        public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

        public static Vector operator *(Vector a, double k) => new(a.X * k, a.Y * k, a.Z * k);

        public double Dot(Vector b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

        public Vector Cross(Vector b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

        /// <summary>Turned right-handed about a unit axis (Rodrigues).</summary>
        public Vector Turned(Vector axis, double angle)
        {
            (double s, double c) = Math.SinCos(angle);
            return (this * c) + (axis.Cross(this) * s) + (axis * (axis.Dot(this) * (1.0 - c)));
        }
    }
}
