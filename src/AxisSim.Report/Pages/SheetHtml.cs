using System.Xml.Linq;
using AxisSim.Report.Sheets;

namespace AxisSim.Report.Pages;

/// <summary>A settings sheet as a section of a page.</summary>
internal static class SheetHtml
{
    /// <summary>The section.</summary>
    public static XElement Of(SettingsSheet sheet) => Html.Element(
        "section",
        [
            Html.Class("sheet"),
            Html.Attribute("aria-labelledby", "sheet"),
            Html.Element("h2", Html.Attribute("id", "sheet"), sheet.Title),
            Warning(sheet),
            .. Typed(sheet),
            Html.Element("h3", "Numbers to enter"),
            .. sheet.Settings.Select(group => Table(group.Name, sheet.Axes, group.Rows, blanks: false)),
            .. sheet.Notes.Select(note => Html.Element("p", Html.Class("quiet"), note)),
            Html.Element("h3", "Check first, in this order"),
            Html.Element("ol", [.. sheet.Checks.Select(check => Html.Element("li", check))]),
            Html.Element("h3", "First power-on: slow and light first"),
            Html.Element("ol", [.. sheet.Steps.Select(step => Step(step, sheet.Axes))]),
            Html.Element("p", Html.Element("strong", sheet.Caution)),
            Html.Element("p", Html.Class("quiet"), sheet.Provenance),
        ]);

    /// <summary>The warning of a move that fails; null when it arrives.</summary>
    public static XElement? Warning(SettingsSheet sheet) => sheet.Warning is { } warning ? Html.Element("p", Html.Class("warning"), warning) : null;

    private static IEnumerable<XElement> Typed(SettingsSheet sheet) => sheet.Typed is not { } typed ? [] :
    [
        Html.Element("h3", typed.Title),
        Table(null, sheet.Axes, typed.Settings, blanks: false),
        Html.Element("p", Html.Element("strong", typed.Verdict)),
        .. typed.Results.Count > 0 ? [Table(null, sheet.Axes, typed.Results, blanks: false)] : Array.Empty<XElement>(),
        .. typed.Notes.Select(note => Html.Element("p", Html.Class("quiet"), note)),
    ];

    private static XElement Step(SheetStep step, IReadOnlyList<string> axes) => Html.Element(
        "li",
        Html.Class("step"),
        Html.Element("strong", step.Title + "."),
        " " + step.Do,
        Table(null, axes, step.Expected, blanks: true),
        Html.Element("p", Html.Element("strong", "Stop if"), " " + step.StopIf));

    private static XElement Table(string? caption, IReadOnlyList<string> axes, IReadOnlyList<SheetRow> rows, bool blanks)
    {
        string last = "";
        return Html.Element(
            "table",
            caption is null ? null : Html.Element("caption", caption),
            Html.Element("thead", Html.Element("tr", [Head(blanks ? "Expected" : "Number"), .. axes.Select(Head)])),
            Html.Element("tbody", [.. rows.Select(Row)]));

        // A row without a name goes on with the one above: out of its column it needs the name again.
        XElement Row(SheetRow row)
        {
            last = row.Name.Length > 0 ? row.Name : last;
            return Html.Element(
                "tr",
                [
                    Html.Element("th", Html.Attribute("scope", "row"), last, row.Unit.Length > 0 ? Html.Element("span", Html.Class("unit"), ", " + row.Unit) : null),
                    .. row.Values.Select(value => Html.Element("td", value, blanks ? Html.Element("span", Html.Class("blank"), "\u00a0") : null)),
                ]);
        }
    }

    private static XElement Head(string text) => Html.Element("th", Html.Attribute("scope", "col"), text);
}
