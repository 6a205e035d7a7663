using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Tests.Docs;

namespace AxisSim.Tests.Unit.Cli.Output;

/// <summary>Settings are read as typed and run on both axes before anybody is told to type them.</summary>
public sealed class TypedTrialTests
{
    private const double AsItIs = 1.0;

    private static readonly MountAxis[] s_polar = [MountAxis.Polar];

    // The move is short, so that a run is.
    private static readonly string[] s_short = ["move.end_polar=-12 deg", "move.end_declination=15 deg", "move.observe=8 s"];

    [Fact]
    public void The_first_line_that_holds_is_taken_and_the_others_are_passed_over()
    {
        // 90 deg/s is faster than its pulses, so it is not even read; 0.05 A cannot carry 2 N m of friction and imbalance; 2 deg/s with the current as it is holds.
        TypedLine[] lines =
        [
            new(s_polar, ["polar.motion.slew_rate=90 deg/s"]),
            new(s_polar, ["polar.drive.slew_current=0.05 A"]),
            new(s_polar, ["polar.motion.slew_rate=2 deg/s"]),
            new(s_polar, ["polar.motion.slew_rate=1 deg/s"]),
        ];
        Assert.Same(lines[2], TypedTrial.First(Shipped.Read("heavy-reflector", s_short), lines, AsItIs, new QuestionOptions()));
        Assert.Null(TypedTrial.First(Shipped.Read("heavy-reflector", s_short), lines[..2], AsItIs, new QuestionOptions()));
    }

    [Fact]
    public void A_line_that_is_good_for_one_axis_and_ends_the_other_does_not_hold()
    {
        // Good for the polar axis, which it does not touch; the declination axis loses step.
        TypedLine line = new(s_polar, ["declination.drive.slew_current=0.05 A"]);
        Assert.Null(TypedTrial.First(Shipped.Read("heavy-reflector", s_short), [line], AsItIs, new QuestionOptions()));
    }

    [Fact]
    public void What_is_promised_reads_well()
    {
        Assert.Equal("the polar axis arrives and settles", new TypedLine(s_polar, []).Promise);
        Assert.Equal("the polar axis and the declination axis arrive and settle", new TypedLine([MountAxis.Polar, MountAxis.Declination], []).Promise);
    }
}
