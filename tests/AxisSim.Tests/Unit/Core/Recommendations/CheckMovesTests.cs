using AxisSim.Core.Mount;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>The moves that stand for the sky.</summary>
public sealed class CheckMovesTests
{
    [Theory]
    [InlineData(MountAxis.Polar, 54.4)]
    [InlineData(MountAxis.Declination, 54.4)]
    [InlineData(MountAxis.Polar, -33.0)]
    [InlineData(MountAxis.Declination, 0.0)]
    public void They_have_both_directions_and_sides_and_stay_above_the_horizon(MountAxis axis, double latitude)
    {
        Scenario scenario = Setups.Scenario("heavy-reflector-stalls", FormattableString.Invariant($"site.latitude={latitude} deg"));
        IReadOnlyList<CheckMove> moves = CheckMoves.Of(scenario.Setup, axis, scenario.LatitudeRadians);
        Assert.Equal(CheckMoveKind.Own, moves[0].Kind);
        foreach (CheckMoveKind kind in new[] { CheckMoveKind.OpposedAtStart, CheckMoveKind.HelpedAtEnd })
        {
            foreach (PierSide side in Enum.GetValues<PierSide>())
            {
                Assert.Contains(moves, move => move.Kind == kind && move.Side == side && move.TurnRadians > 0.0);
                Assert.Contains(moves, move => move.Kind == kind && move.Side == side && move.TurnRadians < 0.0);
            }
        }

        foreach (CheckMove move in moves.Skip(1))
        {
            Assert.InRange(Math.Abs(move.TurnRadians), 30.0 * Setups.Degree - 1e-9, CheckMoves.LongestRadians + 1e-9);
            Assert.True(SkyPose.SineOfAltitude(move.Start, scenario.LatitudeRadians) > 0.0 && SkyPose.SineOfAltitude(move.End, scenario.LatitudeRadians) > 0.0);
        }
    }

    /// <summary>An imbalance out along the declination axis alone pulls hardest where that axis is level, at 0 and -180 degrees.</summary>
    [Fact]
    public void The_polar_axis_is_opposed_hardest_where_the_bar_is_level()
    {
        MountSetup read = Setups.Of("heavy-reflector");
        MountSetup setup = read with { Load = read.Load with { PolarGravity = [10.0, 0.0, 0.0, 0.0, 0.0, 0.0] } };
        CheckMove falling = CheckMoves.Of(setup, MountAxis.Polar, 54.4 * Setups.Degree).First(move => move.Kind == CheckMoveKind.OpposedAtStart && move.TurnRadians < 0.0);
        Assert.Equal(0.0, falling.Start.PolarRadians, 1e-9);
        CheckMove helped = CheckMoves.Of(setup, MountAxis.Polar, 54.4 * Setups.Degree).First(move => move.Kind == CheckMoveKind.HelpedAtEnd && move.TurnRadians > 0.0);
        Assert.Equal(0.0, helped.End.PolarRadians, 1e-9);
    }

    [Fact]
    public void A_shortened_move_keeps_the_end_that_matters()
    {
        var move = new CheckMove(CheckMoveKind.HelpedAtEnd, MountAxis.Polar, PierSide.West, new MountPose(-1.5, 0.2), new MountPose(0.0, 0.2));
        Assert.Equal(move with { Start = new MountPose(-0.5, 0.2) }, move.Shortened(0.5));
        CheckMove opposed = move with { Kind = CheckMoveKind.OpposedAtStart };
        Assert.Equal(opposed with { End = new MountPose(-1.0, 0.2) }, opposed.Shortened(0.5));
        Assert.Equal(move, move.Shortened(2.0));
        CheckMove own = new(CheckMoveKind.Own, MountAxis.Polar, PierSide.West, new MountPose(0.0, 0.0), new MountPose(-1.0, 0.7));
        Assert.Equal(new MountPose(0.0, 0.7), own.Shortened(0.5).Start);
        Assert.Equal(new MountPose(-0.5, 0.7), own.Shortened(0.5).End);
    }
}
