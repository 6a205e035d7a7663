using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Unit.Cli;

/// <summary>Why a move fails, in words.</summary>
public sealed class CauseTextTests
{
    [Fact]
    public void Every_cause_and_every_change_has_words_of_its_own()
    {
        Diagnosis any = SampleReports.Stalling().Results[0].Diagnosis!;
        Assert.Distinct(Enum.GetValues<FailureCause>().Select(cause => CauseText.Cause(any with { Cause = cause })));
        Assert.Distinct(Enum.GetValues<Counterfactual>().Select(change => CauseText.Counterfactuals([new(change, true)]).Single()));
    }

    [Fact]
    public void Wind_is_told_apart_from_imbalance_and_counted_in_the_need()
    {
        // Paper: 6.7 + 27.3 + 20 + 10.3 + 112 = 176.3 mN m against the wind, 136.3 mN m with it.
        var sample = SampleReports.Stalling().Results[0];
        string against = CauseText.Shares(sample.Outcome, sample.Diagnosis!.Shares with { WindNewtonMetres = 0.020 });
        Assert.Contains("needed 176 mN m", against, StringComparison.Ordinal);
        Assert.Contains("27.3 mN m against imbalance, 20 mN m against wind,", against, StringComparison.Ordinal);
        string with = CauseText.Shares(sample.Outcome, sample.Diagnosis.Shares with { WindNewtonMetres = -0.020 });
        Assert.Contains("needed 136 mN m", with, StringComparison.Ordinal);
        Assert.Contains("20 mN m less because wind helps", with, StringComparison.Ordinal);
        Assert.DoesNotContain("wind", CauseText.Shares(sample.Outcome, sample.Diagnosis.Shares), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(72.0, false, "must hold 72 N m")]
    [InlineData(null, true, "less than 10 % to spare")]
    [InlineData(null, false, "would not arrive")]
    public void A_clutch_is_told_what_it_must_hold(double? to, bool arrivesAtTried, string words)
    {
        Diagnosis any = SampleReports.Stalling().Results[0].Diagnosis!;
        string cause = CauseText.Cause(any with { Cause = FailureCause.Clutch, Remedies = [new Remedy(RemedyKind.FirmerClutch, 60.0, to, 480.0, arrivesAtTried)] });
        Assert.Contains("slips at 60 N m", cause, StringComparison.Ordinal);
        Assert.Contains(words, cause, StringComparison.Ordinal);
        Assert.DoesNotContain("motor", cause, StringComparison.Ordinal);
    }
}
