using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Payloads;

public sealed class MountLoadBuilderTests
{
    private const double G = StandardGravity.MetresPerSecondSquared;

    // Rounding of sums of a few dozen terms of the same size, relative.
    private const double Rounding = 1e-11;

    private static readonly Gen<PayloadBody> Bodies = Gen.Select(
        Gen.Enum<BodyShape>(),
        Gen.Enum<BodyDirection>(),
        Gen.Double[0.1, 30.0],
        Gen.Select(Gen.Double[-1.0, 1.0], Gen.Double[-1.0, 1.0], Gen.Double[-1.0, 1.0]),
        Gen.Select(Gen.Double[0.01, 1.5], Gen.Double[0.01, 0.5], Gen.Double[0.01, 0.5]),
        (shape, direction, mass, at, size) => new PayloadBody
        {
            Name = "body",
            Shape = shape,
            Direction = direction,
            MassKilograms = mass,
            OutMetres = at.Item1,
            ForwardMetres = at.Item2,
            SideMetres = at.Item3,
            LengthMetres = size.Item1,
            DiameterMetres = size.Item2 + size.Item3,
            InnerDiameterMetres = size.Item2,
            WidthMetres = size.Item2,
            HeightMetres = size.Item3,
        });

    private static readonly Gen<(PayloadModel Payload, double Latitude, MountPose Pose)> Cases = Gen.Select(
        Bodies.List[1, 4],
        Gen.Select(Gen.Bool, Gen.Bool, Gen.Double[0.0, 20.0], Gen.Double[0.05, 1.0]),
        Gen.Double[-Math.PI / 2.0, Math.PI / 2.0],
        Gen.Select(Gen.Double[-4.0, 4.0], Gen.Double[-4.0, 4.0]),
        (bodies, weight, latitude, pose) => (
            new PayloadModel
            {
                Bodies = bodies,
                Counterweight = weight.Item1
                    ? new Counterweight
                    {
                        MassKilograms = weight.Item3,
                        DistanceMetres = weight.Item4,
                        DiameterMetres = 0.2,
                        LengthMetres = 0.1,
                        BarMassKilograms = 2.0,
                        BarLengthMetres = 0.6,
                        TurnsWithDeclination = weight.Item2,
                    }
                    : null,
            },
            latitude,
            new MountPose(pose.Item1, pose.Item2)));

    [Fact]
    public void Torques_and_inertias_equal_those_of_point_clouds_turned_in_space() => Cases.Sample(c =>
    {
        MountLoad load = MountLoadBuilder.FromBodies(c.Payload, c.Latitude);
        PointCloud cloud = PointCloud.Of(c.Payload, c.Latitude, c.Pose);
        foreach (MountAxis axis in Enum.GetValues<MountAxis>())
        {
            Assert.Equal(cloud.GravityTorque(axis), load.GravityTorque(axis, c.Pose), Rounding * cloud.TorqueScale);
            Assert.Equal(cloud.Inertia(axis), load.Inertia(axis, c.Pose.DeclinationRadians), Rounding * cloud.InertiaScale);
        }
    });

    [Fact]
    public void Torque_is_minus_the_gradient_of_the_potential_energy() => Cases.Sample(c =>
    {
        // Central differences: error h2/6 of the third derivative (as large as the torque), plus rounding over h.
        const double H = 1e-4;
        const double Tolerance = (H * H / 6.0) + 1e-10;
        MountLoad load = MountLoadBuilder.FromBodies(c.Payload, c.Latitude);
        double Energy(double p, double d) => PointCloud.Of(c.Payload, c.Latitude, new MountPose(p, d)).PotentialEnergy;
        (double p, double d) = (c.Pose.PolarRadians, c.Pose.DeclinationRadians);
        double scale = PointCloud.Of(c.Payload, c.Latitude, c.Pose).TorqueScale;
        double polar = -(Energy(p + H, d) - Energy(p - H, d)) / (2.0 * H);
        double declination = -(Energy(p, d + H) - Energy(p, d - H)) / (2.0 * H);
        Assert.Equal(polar, load.GravityTorque(MountAxis.Polar, c.Pose), Tolerance * scale);
        Assert.Equal(declination, load.GravityTorque(MountAxis.Declination, c.Pose), Tolerance * scale);
    });

    [Fact]
    public void Slope_of_the_inertia_is_its_derivative() => Cases.Sample(c =>
    {
        const double H = 1e-4;
        const double Tolerance = (4.0 * H * H / 6.0) + 1e-10; // double angles in the inertia: third derivative four times the first
        MountLoad load = MountLoadBuilder.FromBodies(c.Payload, c.Latitude);
        PointCloud cloud = PointCloud.Of(c.Payload, c.Latitude, c.Pose);
        double d = c.Pose.DeclinationRadians;
        double inertia = (load.Inertia(MountAxis.Polar, d + H) - load.Inertia(MountAxis.Polar, d - H)) / (2.0 * H);
        Assert.Equal(inertia, load.PolarInertiaSlope(d), 2.0 * Tolerance * cloud.InertiaScale);
    });

    [Theory]
    [InlineData(54.4)]
    [InlineData(-33.0)]
    public void Weight_on_the_telescope_side_pulls_it_down(double latitudeDegrees)
    {
        // 10 kg at 0.3 m on a horizontal declination axis: 10 * 9.80665 * 0.3 = 29.42 N m across a horizontal axis,
        // times cos(latitude) about the inclined one; growing polar angle sinks the telescope side, so positive.
        double latitude = double.DegreesToRadians(latitudeDegrees);
        MountLoad load = MountLoadBuilder.FromBodies(Point(10.0, 0.3, 0.0, 0.0), latitude);
        Assert.Equal(29.41995 * Math.Cos(latitude), load.GravityTorque(MountAxis.Polar, new(0.0, 0.4)), 1e-12 * 30.0);
        Assert.Equal(0.0, load.GravityTorque(MountAxis.Polar, new(Math.PI / 2.0, 0.4)), 1e-12 * 30.0);
        Assert.Equal(0.9, load.Inertia(MountAxis.Polar, 0.4), 1e-12);
    }

    [Theory]
    [InlineData(54.4)]
    [InlineData(-33.0)]
    public void Front_heavy_tube_sinks_towards_the_horizon(double latitudeDegrees)
    {
        // At p = 0, d = 0 the tube points at the meridian and the equator, 90 - |latitude| above the horizon. A weight of 2 kg 0.5 m in front
        // pulls the tube down, away from the zenith, hence away from the elevated pole: m g r |sin(latitude)|, negative.
        double latitude = double.DegreesToRadians(latitudeDegrees);
        MountLoad load = MountLoadBuilder.FromBodies(Point(2.0, 0.0, 0.5, 0.0), latitude);
        Assert.Equal(-9.80665 * Math.Abs(Math.Sin(latitude)), load.GravityTorque(MountAxis.Declination, new(0.0, 0.0)), 1e-12 * 10.0);
        // Pointing west (p = 90 degrees) at the equator the front is level; the polar axis feels it with its whole lever, sinking.
        Assert.Equal(9.80665 * Math.Cos(latitude), load.GravityTorque(MountAxis.Polar, new(Math.PI / 2.0, 0.0)), 1e-12 * 10.0);
    }

    [Fact]
    public void Balanced_mount_feels_no_torque_at_any_pose() =>
        Gen.Select(Gen.Double[-1.5, 1.5], Gen.Double[-4.0, 4.0], Gen.Double[-4.0, 4.0]).Sample((latitude, p, d) =>
        {
            // 12 kg at 0.25 m out against 6 kg at 0.5 m; a front weight against a rear one.
            PayloadModel payload = new()
            {
                Bodies =
                [
                    new() { Name = "tube", Shape = BodyShape.Tube, MassKilograms = 10.0, OutMetres = 0.25, LengthMetres = 1.0, DiameterMetres = 0.3, InnerDiameterMetres = 0.29 },
                    new() { Name = "front", Shape = BodyShape.Point, MassKilograms = 1.0, OutMetres = 0.25, ForwardMetres = 0.4, SideMetres = 0.1 },
                    new() { Name = "rear", Shape = BodyShape.Point, MassKilograms = 1.0, OutMetres = 0.25, ForwardMetres = -0.4, SideMetres = -0.1 },
                ],
                Counterweight = new() { MassKilograms = 6.0, DistanceMetres = 0.5 },
            };
            MountLoad load = MountLoadBuilder.FromBodies(payload, latitude);
            Assert.Equal(0.0, load.GravityTorque(MountAxis.Polar, new(p, d)), 1e-12);
            Assert.Equal(0.0, load.GravityTorque(MountAxis.Declination, new(p, d)), 1e-12);
        });

    [Fact]
    public void Southern_mount_is_the_mirror_image_of_the_northern() => Cases.Sample(c =>
    {
        // Mirrored in the east-west vertical plane the payload's side offset changes its hand; angles keep theirs.
        PayloadModel mirrored = c.Payload with { Bodies = [.. c.Payload.Bodies.Select(b => b with { SideMetres = -b.SideMetres })] };
        double latitude = Math.Abs(c.Latitude) + 1e-9;
        MountLoad north = MountLoadBuilder.FromBodies(c.Payload, latitude);
        MountLoad south = MountLoadBuilder.FromBodies(mirrored, -latitude);
        foreach (MountAxis axis in Enum.GetValues<MountAxis>())
        {
            Assert.Equal(north.GravityTorque(axis, c.Pose), south.GravityTorque(axis, c.Pose));
            Assert.Equal(north.Inertia(axis, c.Pose.DeclinationRadians), south.Inertia(axis, c.Pose.DeclinationRadians), 1e-13 * (1.0 + north.PolarInertia[0]));
        }
    });

    [Fact]
    public void Lumped_load_follows_its_law() =>
        Gen.Select(Gen.Double[-1.5, 1.5], Gen.Double[-20.0, 20.0], Gen.Double[-4.0, 4.0], Gen.Double[-4.0, 4.0], Gen.Double[-4.0, 4.0])
            .Sample((latitude, torque, phase, p, d) =>
            {
                LumpedLoad lump = new(3.0, torque, phase);
                MountPose pose = new(p, d);
                MountLoad load = MountLoadBuilder.FromLumped(lump, lump, latitude);
                Assert.Equal(torque * Math.Cos(latitude) * Math.Sin(p + phase), load.GravityTorque(MountAxis.Polar, pose), 1e-12 * 20.0);
                // The same mass moment as a point body turned on by the phase: the declination axis feels what a pointer at d + phase would.
                MountLoad pointer = MountLoadBuilder.LawOf(Point(torque / G, 0.0, 1.0, 0.0), latitude); // a negative mass pulls the other way
                Assert.Equal(pointer.GravityTorque(MountAxis.Declination, new(p, d + phase)), load.GravityTorque(MountAxis.Declination, pose), 1e-12 * 20.0);
                Assert.Equal(3.0, load.Inertia(MountAxis.Polar, d));
                Assert.Equal(3.0, load.Inertia(MountAxis.Declination, d));
            });

    [Fact]
    public void Axis_left_out_has_no_load()
    {
        MountLoad load = MountLoadBuilder.FromLumped(null, new(1.0, 2.0, 0.0), 0.9);
        Assert.Equal(0.0, load.GravityTorque(MountAxis.Polar, new(1.0, 1.0)));
        Assert.Equal(0.0, load.Inertia(MountAxis.Polar, 1.0));
        Assert.NotEqual(0.0, load.GravityTorque(MountAxis.Declination, new(1.0, 1.0)));
    }

    private static PayloadModel Point(double mass, double outMetres, double forward, double side) => new()
    {
        Bodies = [new() { Name = "point", Shape = BodyShape.Point, MassKilograms = mass, OutMetres = outMetres, ForwardMetres = forward, SideMetres = side }],
    };
}
