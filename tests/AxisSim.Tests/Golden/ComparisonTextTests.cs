using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Golden;

/// <summary>The page of a comparison word for word, under several cultures, from results that are made by hand.</summary>
public sealed class ComparisonTextTests
{
    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void One_of_every_fate(string culture) => Check("comparison-fates.txt", culture, SampleComparisons.EveryFate);

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_will_do(string culture) => Check("comparison-none.txt", culture, SampleComparisons.None);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_lone_motor(string culture) => Check("comparison-lone.txt", culture, SampleComparisons.Lone);

    private static void Check(string name, string culture, Func<ComparisonReport> report)
    {
        string text = Cultures.Under(culture, () =>
        {
            using var writer = new StringWriter();
            ComparisonPresenter.Write(new Page(writer, colour: false), report(), ["out/comparison.csv"]);
            return writer.ToString();
        });
        Assert.All(text, letter => Assert.True(char.IsAscii(letter), $"{letter} is not ASCII"));
        Assert.All(text.Split('\n').Where(line => !line.Contains("--set", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, Page.Width));
        GoldenText.Check(name, text);
    }
}
