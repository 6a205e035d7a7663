using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Unit.Report.Text;

/// <summary>Poses in words: what the sky has, on either side of the pier and of the equator.</summary>
public sealed class SkyTextTests
{
    private const double Degree = Math.PI / 180.0, Hour = Math.PI / 12.0, North = 54.4 * Degree, South = -33.0 * Degree;

    [Theory]
    [InlineData(-2.5, 30.0, "west", "hour angle -2.5 h (2 h 30 min east of the meridian), declination 30 deg, telescope west of the pier")]
    [InlineData(2.5, 30.0, "east", "hour angle 2.5 h (2 h 30 min west of the meridian), declination 30 deg, telescope east of the pier")]
    [InlineData(0.0, -12.25, "east", "hour angle 0 h (on the meridian), declination -12.25 deg, telescope east of the pier")]
    [InlineData(-0.1, 80.0, "east", "hour angle -0.1 h (6 min east of the meridian), declination 80 deg, telescope east of the pier")]
    public void A_pose_has_the_names_of_the_sky(double hours, double declination, string side, string words)
    {
        foreach (double latitude in new[] { North, South })
        {
            MountPose pose = SkyPose.ToMechanical(hours * Hour, declination * Degree, side == "west" ? PierSide.West : PierSide.East, latitude);
            Assert.Equal(words, SkyText.Of(pose, latitude));
        }
    }

    [Fact]
    public void Across_the_meridian_the_telescope_changes_sides()
    {
        MoveSettings move = Move((-1.0, 20.0, PierSide.West), (1.5, 20.0, PierSide.East));
        Assert.Equal("across the meridian: the telescope changes sides, from west to east of the pier", SkyText.Between(move, North));

        // Mechanically that is 142.5 deg in the polar and 140 deg in the declination axis: neither is on the sky.
        string all = SkyText.Of(move.Start, North) + SkyText.Of(move.End, North);
        Assert.DoesNotContain("160", all, StringComparison.Ordinal);
        Assert.DoesNotContain("157", all, StringComparison.Ordinal);
        Assert.Contains("declination 20 deg, telescope east", all, StringComparison.Ordinal);
    }

    [Fact]
    public void On_one_side_of_the_sky_nothing_is_said() => Assert.Null(SkyText.Between(Move((-5.0, 10.0, PierSide.West), (-1.0, 55.0, PierSide.West)), North));

    [Fact]
    public void Past_the_meridian_on_one_side_of_the_pier() =>
        Assert.Equal("across the meridian, the telescope west of the pier throughout", SkyText.Between(Move((-1.0, 10.0, PierSide.West), (0.5, 10.0, PierSide.West)), North));

    private static MoveSettings Move((double Hours, double Degrees, PierSide Side) from, (double Hours, double Degrees, PierSide Side) to) => new()
    {
        Start = SkyPose.ToMechanical(from.Hours * Hour, from.Degrees * Degree, from.Side, North),
        End = SkyPose.ToMechanical(to.Hours * Hour, to.Degrees * Degree, to.Side, North),
        SettleToleranceRadians = 1e-5,
    };
}
