using System.Xml.Linq;
using AxisSim.Plots.Drawing;

namespace AxisSim.Report.Pages;

/// <summary>A report as one HTML page that needs nothing but itself: no script, no network, its style and figures inside.</summary>
internal static class ReportHtml
{
    /// <summary>Writes the page.</summary>
    public static void Write(ReportPage page, Stream stream) => Html.Write(Root(page), stream);

    private static XElement Root(ReportPage page) => Html.Element(
        "html",
        Html.Attribute("lang", "en"),
        Html.Element(
            "head",
            Html.Element("meta", Html.Attribute("charset", "utf-8")),
            Html.Element("meta", Html.Attribute("name", "viewport"), Html.Attribute("content", "width=device-width, initial-scale=1")),
            Html.Element("title", $"{page.Name}: report and settings sheet"),
            Html.Element("style", StyleText.All)),
        Html.Element(
            "body",
            Html.Element("header", SheetHtml.Warning(page.Sheet), Html.Element("h1", $"Report of the mount \u201c{page.Name}\u201d"), page.About.Length > 0 ? Html.Element("p", page.About) : null),
            Html.Element("main", [.. Main(page)]),
            Html.Element("footer", Html.Element("h2", "Where this comes from"), BlockHtml.Values(page.Provenance))));

    private static IEnumerable<object> Main(ReportPage page)
    {
        yield return Html.Element("p", Html.Class("verdict"), page.Sheet.Verdict);
        foreach (XElement element in BlockHtml.Of(page.Lead).Concat(Sections(page.Reasons)))
        {
            yield return element;
        }

        yield return SheetHtml.Of(page.Sheet);
        yield return Html.Element("h2", "The move, drawn");
        foreach ((string key, IFigure figure) in page.Figures)
        {
            yield return Html.Element("figure", SvgInline.Of(key, figure), Html.Element("figcaption", figure.Description));
        }

        foreach (XElement element in Sections(page.Rest))
        {
            yield return element;
        }
    }

    private static IEnumerable<XElement> Sections(IEnumerable<Section> sections) =>
        sections.SelectMany(section => BlockHtml.Of(section.Blocks).Prepend(Html.Element("h2", section.Heading)));
}
