using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Cli.Text.Moves;

/// <summary>What is said of the path, and of a motor that is too strong.</summary>
public sealed class SlewTextTests
{
    private const double Degree = Math.PI / 180.0;

    [Fact]
    public void The_slew_is_that_of_the_axis_and_the_slower_one_is_named()
    {
        // Paper, 3 deg/s with 2 s ramps: 70 deg take 25.3 s, 40 deg take 15.3 s.
        MoveReport report = SampleReports.Stalling();
        AxisOutcome polar = report.Results[0].Outcome;
        AxisOutcome declination = report.Results[1].Outcome;
        Assert.Equal("25.3 s, as planned", SlewText.Duration(report.Setup, polar));
        Assert.Equal("15.3 s, as planned; the slower polar axis takes 25.3 s", SlewText.Duration(report.Setup, declination));
        MoveSettings still = report.Setup.Move with { End = report.Setup.Move.Start with { PolarRadians = report.Setup.Move.End.PolarRadians } };
        Assert.Contains("none of this axis", SlewText.Duration(report.Setup with { Move = still }, declination), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(75.0, "5 deg before its start")] // -75 + 75 = 0, and the path is -5 to -75
    [InlineData(-20.0, "20 deg past its target")]
    [InlineData(30.0, null)]
    [InlineData(70.5, null)]
    public void An_axis_that_ends_off_its_path_is_told(double totalDegrees, string? words)
    {
        MoveReport report = SampleReports.Stalling();
        AxisOutcome outcome = report.Results[0].Outcome;
        string? text = SlewText.Runaway(report.Setup, outcome with { Offset = outcome.Offset with { TotalRadians = totalDegrees * Degree } });
        Assert.Equal(words is not null, text is not null);
        Assert.Contains(words ?? "", text ?? "", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, 6.0, 0.95, true)]
    [InlineData(true, 6.0, 0.85, false)]
    [InlineData(false, 5.9, 0.95, false)]
    public void A_motor_that_is_wasted_is_told(bool atLeast, double factor, double margin, bool told)
    {
        MoveReport report = SampleReports.Arriving();
        AxisOutcome outcome = report.Results[0].Outcome;
        outcome = outcome with { LoadFactor = new LoadFactor(factor, atLeast), Margin = outcome.Margin with { Value = margin } };
        using var writer = new StringWriter();
        WasteText.Write(new Page(writer, colour: false), outcome, new AxisAdvice { Axis = outcome.Axis, Savings = WasteText.Candidates(report.Setup, outcome) });
        Assert.Equal(told, writer.ToString().Contains("--set \"polar.drive.slew_current=0.6 A\"", StringComparison.Ordinal));
        Assert.Equal(told, writer.ToString().Contains("--set \"polar.motion.slew_rate=6 deg/s\"", StringComparison.Ordinal));
    }

    [Fact]
    public void The_verdict_says_first_how_far_off_the_target_it_ends() =>
        Assert.Equal("ARRIVES: the polar axis arrives and settles, 0.824 s after the mount's slew of 25.3 s, but off its target by 6.02 arcsec.", VerdictText.OfMount(SampleReports.Arriving().Results));
}
