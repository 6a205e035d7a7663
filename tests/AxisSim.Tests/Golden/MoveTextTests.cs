using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Golden;

/// <summary>The page of a move word for word, under several cultures, from results that are made by hand.</summary>
public sealed class MoveTextTests
{
    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void A_move_that_arrives(string culture) => Check("move-arrives.txt", culture, SampleReports.Arriving);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_move_that_stalls(string culture) => Check("move-stalls.txt", culture, SampleReports.Stalling);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_clutch_that_slips_and_an_axis_that_swings(string culture) => Check("move-slips.txt", culture, SampleReports.SlippingAndSwinging);

    // Paper: 25 arcsec of backlash and twice 1.2 N m / 4e4 N m/rad = 12.4 arcsec of wind-up, at 15.04 arcsec/s: 2.48 s.
    [Theory]
    [MemberData(nameof(Names))]
    public void An_axis_that_tracks_the_other_way_and_creeps(string culture) => Check("move-creeps.txt", culture, SampleReports.Creeping);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_run_that_broke_down(string culture) => Check("move-broken.txt", culture, SampleReports.Broken);

    private static void Check(string name, string culture, Func<MoveReport> report)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            MovePresenter.Write(new Page(writer, colour: false), report(), ["out/polar-trace.csv"]);
            return writer.ToString();
        });
        Assert.DoesNotContain('\u001b', text);
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.DoesNotContain("E-0", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
