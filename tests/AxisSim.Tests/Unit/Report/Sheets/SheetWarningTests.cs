using AxisSim.Core.Outcomes;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Report.Sheets;

/// <summary>Warnings of a sheet where only a slower slew fails.</summary>
public sealed class SheetWarningTests
{
    [Fact]
    public void A_slower_slew_that_fails_is_left_out_although_the_full_one_arrives()
    {
        SheetInput input = SampleSheets.Of(SampleReports.Arriving());
        SheetAxis axis = input.Axes[0];
        SettingsSheet sheet = SheetBuilder.Of(input with { Axes = [axis with { Slews = [axis.Slews[0], axis.Slews[1] with { Outcome = axis.Slews[1].Outcome with { Verdict = Verdict.Stalls } }, axis.Slews[2]] }] });
        Assert.Equal("CAREFUL: the full slew rate arrives, but this is predicted to fail: half the slew rate. Leave it out.", sheet.Warning);
        Assert.StartsWith("LEAVE THIS OUT", Assert.Single(sheet.Steps, step => step.Title == "Half the slew rate").Do, StringComparison.Ordinal);
        Assert.DoesNotContain("LEAVE", sheet.Steps[^1].Do, StringComparison.Ordinal);
        Assert.Null(SheetBuilder.Of(input).Warning);
    }
}
