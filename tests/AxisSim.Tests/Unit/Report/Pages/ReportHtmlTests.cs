using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using AxisSim.Report.Pages;
using AxisSim.Report.Sheets;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.Unit.Report.Pages;

/// <summary>The page as a document: well-formed, whole, and needing nothing but itself. A browser looks at it in AxisSim.BrowserTests.</summary>
[Trait("speed", "slow")]
public sealed class ReportHtmlTests
{
    private static readonly string[] s_void = ["br", "meta"];

    public static TheoryData<string> Names => ShippedReports.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_is_well_formed_and_self_contained(string name)
    {
        string text = Text(ShippedReports.Page(name));
        XElement root = Parse(text);
        Assert.Equal("en", (string?)root.Attribute("lang"));
        Assert.DoesNotContain(root.Descendants(), element => element.Name.LocalName is "script" or "link" or "img" or "image" or "iframe" or "object" or "use" or "foreignObject");
        Assert.DoesNotContain(root.Descendants().Attributes(), attribute => attribute.Name.LocalName is "src" or "href" or "srcset" or "action" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));

        // Addresses appear as names of namespaces only, and url() points into the page.
        Assert.All(Regex.Matches(text, @"[^\s""'(<>]*://[^\s""')<>]*").Select(match => match.Value), address => Assert.StartsWith("http://www.w3.org/", address, StringComparison.Ordinal));
        Assert.All(Regex.Matches(text, @"url\(\s*(.)").Select(match => match.Groups[1].Value), first => Assert.Equal("#", first));
        Assert.DoesNotContain("@import", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_reads_the_same_as_html_and_as_xml(string name)
    {
        string text = Text(ShippedReports.Page(name));
        XElement root = Parse(text);
        XNamespace html = "http://www.w3.org/1999/xhtml";

        // "<td />" would stay open in HTML, and an escape in a style would not be undone.
        Assert.DoesNotContain(root.Descendants(), element => element.Name.Namespace == html && element.IsEmpty && !s_void.Contains(element.Name.LocalName));
        Assert.DoesNotContain(root.Descendants(html + "style").Single().Value, letter => letter is '<' or '>' or '&');

        // Names are given once, and each that is pointed to is there.
        string[] ids = [.. root.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Empty(Regex.Matches(text, @"url\(#([^)]*)\)").Select(match => match.Groups[1].Value).Except(ids));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Headings_go_down_one_by_one_and_figures_say_what_they_show(string name)
    {
        XElement root = Parse(Text(ShippedReports.Page(name)));
        int[] levels = [.. root.Descendants().Where(element => Regex.IsMatch(element.Name.LocalName, "^h[1-6]$")).Select(element => element.Name.LocalName[1] - '0')];
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.DoesNotContain(levels.Zip(levels.Skip(1)), pair => pair.Second > pair.First + 1);
        XElement[] figures = [.. root.Descendants().Where(element => element.Name.LocalName == "svg")];
        Assert.NotEmpty(figures);
        Assert.All(figures, figure => Assert.True(figure.Elements().Any(child => child.Name.LocalName == "title" && child.Value.Length > 0) && (string?)figure.Attribute("role") == "img"));
        Assert.All(root.Descendants().Where(element => element.Name.LocalName == "th"), head => Assert.NotNull(head.Attribute("scope")));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_page_carries_all_of_its_sheet_and_the_verdict_first(string name)
    {
        ReportPage page = ShippedReports.Page(name);
        string body = Plain(Parse(Text(page)).Elements().Last().Value);
        SettingsSheet sheet = page.Sheet;
        Assert.StartsWith(Plain(sheet.Warning ?? "Report of the mount"), body, StringComparison.Ordinal);
        Assert.All(
            sheet.Settings.SelectMany(group => group.Rows).Concat(sheet.Steps.SelectMany(step => step.Expected)).SelectMany(row => row.Values)
                .Concat(sheet.Checks).Concat(sheet.Notes).Concat(sheet.Steps.Select(step => step.StopIf)).Append(sheet.Verdict).Append(sheet.Caution).Append(sheet.Provenance),
            piece => Assert.Contains(Plain(piece), body, StringComparison.Ordinal));
    }

    [Fact]
    public void Bytes_do_not_depend_on_culture()
    {
        string first = Text(ShippedReports.Page("nominal"));
        foreach (string culture in new[] { "fr-FR", "ar-SA", "tr-TR" })
        {
            Assert.Equal(first, Cultures.Under(culture, () => Text(ShippedReports.Make(AxisSim.Tests.Docs.Shipped.Read("nominal"), "nominal").Page)));
        }
    }

    [Fact]
    public void A_name_with_signs_of_the_markup_stays_a_name()
    {
        ReportPage page = ShippedReports.Page("nominal") with { Name = "<b>mount & \"sky\"</b>", Figures = [] };
        Assert.Contains("<b>mount & \"sky\"</b>", Parse(Text(page)).Value, StringComparison.Ordinal);
    }

    private static string Text(ReportPage page)
    {
        using MemoryStream stream = new();
        ReportHtml.Write(page, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static XElement Parse(string text)
    {
        using XmlReader reader = XmlReader.Create(new StringReader(text), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null });
        return XElement.Load(reader);
    }

    private static string Plain(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
}
