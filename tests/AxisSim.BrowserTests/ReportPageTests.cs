using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace AxisSim.BrowserTests;

/// <summary>The report in a browser: accessible, no wider than a phone, whole without a network, and printed on a few sheets of A4.</summary>
[Trait("speed", "slow")]
[Trait("needs", "chromium")]
public sealed class ReportPageTests(Browser browser) : IClassFixture<Browser>
{
    private const int Phone = 360;
    private const int Desk = 1280;

    /// <summary>One page of reasons, two of the sheet, two for each axis' figures, two of results: fewer lost something, more is waste.</summary>
    private const int FewestSheets = 4, MostSheets = 12;

    public static TheoryData<string> Scenarios => ["heavy-reflector", "heavy-reflector-stalls", "nominal"];

    [SkippableTheory]
    [MemberData(nameof(Scenarios))]
    public async Task No_rule_of_accessibility_is_broken(string scenario)
    {
        Browser.Need();
        foreach (int width in new[] { Phone, Desk })
        {
            IPage page = await browser.Open(scenario, width, []);
            AxeResult result = await page.RunAxe();
            Assert.True(result.Passes.Length > 10, "the checker looked at nothing");
            Assert.Equal("", string.Join('\n', result.Violations.Select(broken => $"{broken.Id}: {broken.Help}: {string.Join(", ", broken.Nodes.Select(node => node.Html))}")));
            await page.Context.CloseAsync();
        }
    }

    [SkippableFact]
    public async Task The_checker_finds_a_fault_when_there_is_one()
    {
        Browser.Need();
        IPage page = await browser.Open("nominal", Desk, []);
        await page.EvaluateAsync("document.querySelector('svg').querySelector('title').remove(); document.querySelector('svg').removeAttribute('aria-label'); document.documentElement.removeAttribute('lang')");
        AxeResult result = await page.RunAxe();
        Assert.Contains(result.Violations, broken => broken.Id == "html-has-lang");
        Assert.Contains(result.Violations, broken => broken.Id == "svg-img-alt");
        await page.Context.CloseAsync();
    }

    [SkippableTheory]
    [MemberData(nameof(Scenarios))]
    public async Task A_phone_shows_it_without_scrolling_sideways(string scenario)
    {
        Browser.Need();
        IPage page = await browser.Open(scenario, Phone, []);
        Assert.Equal(Phone, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));

        // Nothing hidden at the side either; the marks inside a figure are its own business.
        string[] wide = await page.EvaluateAsync<string[]>(
            "limit => [...document.querySelectorAll('body *')].filter(e => !e.closest('svg') || e.tagName === 'svg')"
            + ".filter(e => { const box = e.getBoundingClientRect(); return box.width > 0 && (box.right > limit + 0.5 || box.left < -0.5); }).map(e => e.outerHTML.slice(0, 80))",
            Phone);
        Assert.Empty(wide);
        await page.Context.CloseAsync();
    }

    [SkippableTheory]
    [MemberData(nameof(Scenarios))]
    public async Task It_asks_for_nothing_and_shows_its_figures(string scenario)
    {
        Browser.Need();
        List<string> asked = [];
        IPage page = await browser.Open(scenario, Desk, asked);
        double[] heights = await page.EvaluateAsync<double[]>("[...document.querySelectorAll('figure svg')].map(e => e.getBoundingClientRect().height)");
        Assert.NotEmpty(heights);
        Assert.All(heights, height => Assert.True(height > 300.0, $"a figure of {height} px"));
        Assert.Empty(asked);
        await page.Context.CloseAsync();
    }

    [SkippableTheory]
    [MemberData(nameof(Scenarios))]
    public async Task It_prints_on_a_few_sheets_of_a4(string scenario)
    {
        Browser.Need();
        IPage page = await browser.Open(scenario, Desk, []);
        string pdf = Encoding.Latin1.GetString(await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true }));
        Assert.InRange(Regex.Count(pdf, @"/Type\s*/Page\b"), FewestSheets, MostSheets);
        Match box = Regex.Match(pdf, @"/MediaBox\s*\[0 0 ([0-9.]+) ([0-9.]+)\]");
        Assert.Equal(595.3, double.Parse(box.Groups[1].Value, CultureInfo.InvariantCulture), 1.0);
        Assert.Equal(841.9, double.Parse(box.Groups[2].Value, CultureInfo.InvariantCulture), 1.0);
        await page.Context.CloseAsync();
    }
}
