using AxisSim.Cli;
using AxisSim.Cli.Hosting;

namespace AxisSim.Tests.Docs;

/// <summary>Every command of the guide runs, prints what the page shows, and every figure in bold is among what it printed.</summary>
/// <remarks>With AXISSIM_REFRESH_GOLDEN=1 the shown outputs are replaced by what the program prints now; the prose is for a person to read again.</remarks>
[Collection("guide")]
[Trait("speed", "slow")]
public sealed class GuideTests
{
    public static TheoryData<string> Pages => ["README.md", "docs/tutorial-heavy-payload.md", "docs/envelope.md", "docs/tutorial-recommend.md", "docs/lesson-reduction.md", "docs/paper-estimates.md", "docs/maps.md", "docs/report.md", "docs/tutorial-compare.md"];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Commands_print_what_the_page_shows(string name)
    {
        var page = new DocPage(Repository.PathOf(name.Split('/')));
        IReadOnlyList<DocQuote> quotes = page.Quotes();
        Assert.NotEmpty(quotes);
        foreach (DocQuote quote in quotes)
        {
            (int code, string output) = DocCommand.Run(quote.Line);
            Assert.True(code is ExitCodes.Good or ExitCodes.PredictedFailure, $"{name}: {quote.Line}\n{output}");
            IReadOnlyList<string>? current = QuoteCheck.Current(quote.Quoted, output);
            Assert.True(current is not null, $"{name}: a part that is shown for {quote.Line} is not printed any more:\n{string.Join('\n', quote.Quoted)}\n\n{output}");
            if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
            {
                for (int i = 0; i < current.Count; i++)
                {
                    page.Lines[quote.FirstLine + i] = current[i];
                }

                File.WriteAllText(page.Path, string.Join('\n', page.Lines));
            }
            else
            {
                Assert.Equal(string.Join('\n', current), string.Join('\n', quote.Quoted));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Figures_in_bold_are_the_programs(string name)
    {
        var page = new DocPage(Repository.PathOf(name.Split('/')));
        string printed = Plain(string.Join('\n', page.Quotes().Select(quote => DocCommand.Run(quote.Line).Output).Append(MadeTables.All())));
        string[] strange = [.. page.BoldFigures().Where(figure => !Printed(printed, Plain(figure)))];
        Assert.True(strange.Length == 0, $"{name}: in bold, but not printed by any command of the page: {string.Join("; ", strange)}");
    }

    // "8 mN m" must not be found within "8.6 mN m" or "118 mN m".
    private static bool Printed(string printed, string figure)
    {
        for (int at = printed.IndexOf(figure, StringComparison.Ordinal); at >= 0; at = printed.IndexOf(figure, at + 1, StringComparison.Ordinal))
        {
            int end = at + figure.Length;
            bool starts = at == 0 || !(char.IsAsciiLetterOrDigit(printed[at - 1]) || printed[at - 1] == '.');
            bool ends = end == printed.Length || !(char.IsAsciiLetterOrDigit(printed[end]) || (printed[end] == '.' && end + 1 < printed.Length && char.IsAsciiDigit(printed[end + 1])));
            if (starts && ends)
            {
                return true;
            }
        }

        return false;
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
