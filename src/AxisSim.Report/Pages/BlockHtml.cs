using System.Xml.Linq;

namespace AxisSim.Report.Pages;

/// <summary>Blocks of text as elements of a page.</summary>
internal static class BlockHtml
{
    /// <summary>The elements; items that follow each other become one list.</summary>
    public static IEnumerable<XElement> Of(IReadOnlyList<Block> blocks)
    {
        for (int i = 0; i < blocks.Count; i++)
        {
            switch (blocks[i])
            {
                case ListItem first:
                    XElement list = Html.Element(first.Numbered ? "ol" : "ul", []);
                    for (; i < blocks.Count && blocks[i] is ListItem item && item.Numbered == first.Numbered; i++)
                    {
                        XElement entry = Html.Element("li", item.Words);
                        for (; i + 1 < blocks.Count && blocks[i + 1] is CopyLine copy; i++)
                        {
                            entry.Add(Html.Element("br", []), Html.Element("code", copy.Line));
                        }

                        list.Add(entry);
                    }

                    i--;
                    yield return list;
                    break;
                case Paragraph paragraph:
                    yield return Html.Element("p", paragraph.Words);
                    break;
                case CopyLine copy:
                    yield return Html.Element("p", Html.Element("code", copy.Line));
                    break;
                case NamedValues values:
                    yield return Values(values.Rows);
                    break;
                case NumberTable table:
                    yield return Table(table);
                    break;
                default:
                    throw new InvalidOperationException($"no such block: {blocks[i].GetType().Name}");
            }
        }
    }

    /// <summary>Names with their values.</summary>
    public static XElement Values(IEnumerable<(string Name, string Value)> rows) => Html.Element(
        "dl",
        [.. rows.SelectMany(row => new[] { Html.Element("dt", row.Name), Html.Element("dd", row.Value) })]);

    private static XElement Table(NumberTable table) => Html.Element(
        "table",
        Html.Element("thead", Html.Element("tr", [.. table.Head.Select(head => Html.Element("th", Html.Attribute("scope", "col"), head))])),
        Html.Element("tbody", [.. table.Rows.Select(row => Html.Element("tr", [.. row.Select(cell => Html.Element("td", cell))]))]));
}
