using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Cli.Text.Moves;

/// <summary>What is said when the same move ends elsewhere at half the step.</summary>
public sealed class RestTextTests
{
    private const double ArcSecond = Math.PI / 648000.0;

    [Fact]
    public void A_rest_that_moves_with_the_step_is_told_beside_the_figures() =>
        Assert.Contains("place of rest known to about 0.5 arcsec: so far off it rests when run again at half the step.", Page(rest => new HalfStepRest(rest - (0.5 * ArcSecond))), StringComparison.Ordinal);

    [Fact]
    public void A_rest_that_stays_within_a_tenth_of_the_tolerance_is_not() =>
        Assert.DoesNotContain("half the step", Page(rest => new HalfStepRest(rest + (0.15 * ArcSecond))), StringComparison.Ordinal);

    [Fact]
    public void A_loss_of_step_at_half_the_step_is_told_with_the_verdict()
    {
        string page = Page(_ => new HalfStepRest(null));
        Assert.Contains("Run again at half the step, the motor loses step", page, StringComparison.Ordinal);
        Assert.DoesNotContain("place of rest", page, StringComparison.Ordinal);
    }

    /// <summary>The page of a move with a tolerance of 2 arcsec, in one line.</summary>
    private static string Page(Func<double, HalfStepRest> half)
    {
        MoveReport report = SampleReports.Arriving();
        AxisOutcome outcome = report.Results[0].Outcome;
        Settling settling = outcome.Settling! with { ToleranceRadians = 2.0 * ArcSecond };
        report = report with { Results = [report.Results[0] with { Outcome = outcome with { Settling = settling with { HalfStep = half(settling.RestRadians) } } }] };
        using var writer = new StringWriter();
        MovePresenter.Write(new Page(writer, colour: false), report, []);
        return string.Join(' ', writer.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
