using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Questions;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Cli.Text.Moves;

/// <summary>Why a move fails, in words.</summary>
public sealed class CauseTextTests
{
    [Fact]
    public void Every_limit_and_every_change_has_words_of_its_own()
    {
        Assert.Distinct(Enum.GetValues<Limit>().Select(LimitWords.Short));
        Assert.Distinct(Enum.GetValues<Limit>().Select(LimitWords.Noun));
        Assert.Distinct(Enum.GetValues<Limit>().Select(LimitWords.Why));
        Assert.Distinct(Enum.GetValues<OneChange>().Select(LimitWords.With));
    }

    [Fact]
    public void Wind_is_told_apart_from_imbalance_and_counted_in_the_need()
    {
        // Paper: 6.7 + 27.3 + 20 + 10.3 + 112 = 176.3 mN m against the wind, 136.3 mN m with it.
        TorqueShares shares = SampleReports.Stalling().Results[0].Diagnosis!.Why.Shares;
        string against = CauseText.Shares(shares with { WindNewtonMetres = 0.020 });
        Assert.Contains("needed 176 mN m", against, StringComparison.Ordinal);
        Assert.Contains("27.3 mN m against imbalance, 20 mN m against wind,", against, StringComparison.Ordinal);
        string with = CauseText.Shares(shares with { WindNewtonMetres = -0.020 });
        Assert.Contains("needed 136 mN m", with, StringComparison.Ordinal);
        Assert.Contains("20 mN m less because wind helps", with, StringComparison.Ordinal);
        Assert.DoesNotContain("wind", CauseText.Shares(shares), StringComparison.Ordinal);
    }

    [Fact]
    public void A_steady_rate_neither_accelerates_nor_slows_down()
    {
        TorqueShares shares = SampleReports.Stalling().Results[0].Diagnosis!.Why.Shares with { InertiaNewtonMetres = 0.0 };
        string text = CauseText.Shares(shares);
        Assert.DoesNotContain("accelerate", text, StringComparison.Ordinal);
        Assert.DoesNotContain("slow", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Resonance_and_instability_are_told_by_what_ends_them()
    {
        Diagnosis any = SampleReports.Stalling().Results[0].Diagnosis!;
        string With(params OneChange[] curing) => CauseText.Cause(any with { Why = any.Why with { Limit = Limit.Swings, Changes = [.. curing.Select(change => new ChangeResult(change, true))] } });
        Assert.Contains("a resonance of full-stepping", With(OneChange.WithoutFullStepping), StringComparison.Ordinal);
        Assert.Contains("the instability that sets in where the supply", With(OneChange.DampedRotor, OneChange.AmpleVoltage), StringComparison.Ordinal);
        Assert.Contains("Neither a damped rotor nor microstepping", With(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(72.0, false, "must hold 72 N m")]
    [InlineData(null, true, "less than 10 % to spare")]
    [InlineData(null, false, "would not arrive")]
    public void A_clutch_is_told_what_it_must_hold(double? to, bool arrivesAtTried, string words)
    {
        Diagnosis any = SampleReports.Stalling().Results[0].Diagnosis!;
        string cause = CauseText.Cause(new Diagnosis(any.Why with { Limit = Limit.Clutch }, new Cures([new Cure(CureKind.FirmerClutch, 60.0, to, 480.0, arrivesAtTried)], [])));
        Assert.Contains("slips at 60 N m", cause, StringComparison.Ordinal);
        Assert.Contains(words, cause, StringComparison.Ordinal);
        Assert.DoesNotContain("motor", cause, StringComparison.Ordinal);
    }
}
