using AxisSim.Cli.Text.Moves;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Golden;

/// <summary>The content of a settings sheet line for line, under several cultures, from results that are made by hand.</summary>
public sealed class SheetTextTests
{
    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void One_axis_with_an_intricate_train(string culture) => Check("sheet-intricate.txt", culture, () => SampleSheets.Of(SampleReports.Arriving(), SampleSheets.Intricate));

    [Theory]
    [MemberData(nameof(Names))]
    public void Two_axes_of_which_one_stalls(string culture) => Check("sheet-stalls.txt", culture, () => SampleSheets.Of(SampleReports.Stalling()));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_clutch_that_slips_and_an_axis_that_swings(string culture) => Check("sheet-slips.txt", culture, () => SampleSheets.Of(SampleReports.SlippingAndSwinging()));

    private static void Check(string name, string culture, Func<SheetInput> input)
    {
        string text = Cultures.Under(culture, () => string.Concat(SheetLines.Of(SheetBuilder.Of(input())).Select(line => line + "\n")));
        Assert.All(text, letter => Assert.True(char.IsAscii(letter) || letter == '\u00b2', $"{letter} is not ASCII"));
        GoldenText.Check(name, text);
    }
}
