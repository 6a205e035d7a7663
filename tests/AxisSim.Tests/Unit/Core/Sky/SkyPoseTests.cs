using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Tests.Unit.Core.Payloads;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Sky;

public sealed class SkyPoseTests
{
    // A few rounding errors of angles up to 2 pi.
    private const double Rounding = 1e-14;

    private static readonly PayloadModel Nothing = new() { Bodies = [] };

    private static readonly Gen<(double HourAngle, double Declination, PierSide Side, double Latitude)> Points = Gen.Select(
        Gen.Double[-3.14, 3.14], Gen.Double[-1.57, 1.57], Gen.Enum<PierSide>(), Gen.Double[-1.5, 1.5]);

    [Fact]
    public void Tube_points_where_the_sky_is() => Points.Sample(c =>
    {
        // Towards the point, in East, North, Up: equator at the meridian, west point and north celestial pole weighted by its coordinates.
        (double sinL, double cosL) = Math.SinCos(c.Latitude);
        (double sinH, double cosH) = Math.SinCos(c.HourAngle);
        (double sinD, double cosD) = Math.SinCos(c.Declination);
        PointCloud.Vector sky = new(-cosD * sinH, (-sinL * cosD * cosH) + (cosL * sinD), (cosL * cosD * cosH) + (sinL * sinD));
        PointCloud mount = PointCloud.Of(Nothing, c.Latitude, SkyPose.ToMechanical(c.HourAngle, c.Declination, c.Side, c.Latitude));
        Assert.Equal(0.0, (sky + (mount.Forward * -1.0)).Length, Rounding);
    });

    [Fact]
    public void Telescope_stands_on_the_named_side_within_six_hours_of_the_meridian() => Points.Sample(c =>
    {
        double hourAngle = c.HourAngle / 2.001;
        PointCloud mount = PointCloud.Of(Nothing, c.Latitude, SkyPose.ToMechanical(hourAngle, c.Declination, c.Side, c.Latitude));
        Assert.Equal(c.Side == PierSide.East, mount.Out.X > 0.0);
    });

    [Fact]
    public void Usual_side_keeps_the_counterweight_down() => Points.Sample(c =>
    {
        double hourAngle = c.Side == PierSide.East ? Math.Abs(c.HourAngle) : -Math.Abs(c.HourAngle);
        MountPose pose = SkyPose.ToMechanical(hourAngle, c.Declination, c.Side, c.Latitude);
        Assert.True(PointCloud.Of(Nothing, c.Latitude, pose).Out.Z >= -Rounding);
        // A turn more would point the same way, but the mount would have to go the long way round to change sides.
        Assert.InRange(pose.PolarRadians, -Math.PI, 0.0);
    });

    [Fact]
    public void There_and_back() => Points.Sample(c =>
    {
        SkyPoint back = SkyPose.ToSky(SkyPose.ToMechanical(c.HourAngle, c.Declination, c.Side, c.Latitude), c.Latitude);
        Assert.Equal(c.HourAngle, back.HourAngleRadians, Rounding);
        Assert.Equal(c.Declination, back.DeclinationRadians, Rounding);
        Assert.Equal(c.Side, back.Side);
    });

    [Theory]
    [InlineData(PierSide.East)]
    [InlineData(PierSide.West)]
    public void Tracking_turns_the_polar_axis_forward_in_both_hemispheres(PierSide side)
    {
        foreach (double latitude in new[] { 0.9, -0.6 })
        {
            MountPose before = SkyPose.ToMechanical(0.3, 0.2, side, latitude);
            MountPose after = SkyPose.ToMechanical(0.4, 0.2, side, latitude);
            Assert.Equal(0.1, after.PolarRadians - before.PolarRadians, Rounding);
            Assert.Equal(before.DeclinationRadians, after.DeclinationRadians);
        }
    }

    [Fact]
    public void Hours_beyond_twelve_are_those_before_the_meridian()
    {
        double hour = Math.PI / 12.0;
        Assert.Equal(-hour / 2.0, SkyPose.ToMechanical(23.5 * hour, 0.1, PierSide.West, 0.9).PolarRadians, Rounding);
    }
}
