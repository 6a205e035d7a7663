using System.Globalization;
using System.Text;
using AxisSim.Files.Keys;
using Tomlyn.Syntax;

namespace AxisSim.Files.Scenarios;

/// <summary>Turns the syntax tree of a TOML file into values by path, with their places.</summary>
internal sealed class TomlWalk(ScenarioDocument document)
{
    // Deeper nesting than any scenario has; the parser itself stops at 64.
    private const int DeepestTable = 8;
    private const int LongestPart = 60;

    /// <summary>Walks the whole tree.</summary>
    public void Walk(DocumentSyntax tree)
    {
        foreach (KeyValueSyntax pair in tree.KeyValues)
        {
            Add("", pair, 0);
        }

        foreach (TableSyntaxBase table in tree.Tables)
        {
            AddTable(table);
        }
    }

    private static Spot SpotOf(SyntaxNodeBase node) => new(node.Span.Start.Line + 1, node.Span.Start.Column + 1);

    private static string? PathOf(KeySyntax? key)
    {
        if (key?.Key is null)
        {
            return null;
        }

        var path = new StringBuilder(PartOf(key.Key));
        int parts = 1;
        foreach (DottedKeyItemSyntax item in key.DotKeys)
        {
            path.Append('.').Append(item.Key is null || ++parts > DeepestTable ? "..." : PartOf(item.Key));
            if (parts > DeepestTable)
            {
                break;
            }
        }

        return path.ToString();
    }

    // A quoted part that holds a dot is one part: the quotes keep it from looking like two.
    private static string PartOf(BareKeyOrStringValueSyntax part) => part switch
    {
        BareKeySyntax bare => Shortened(bare.Key?.Text ?? ""),
        StringValueSyntax text => text.Value is { } value && !value.Contains('.', StringComparison.Ordinal) ? Shortened(value) : $"\"{Shortened(text.Value ?? "")}\"",
        _ => "",
    };

    private static string Shortened(string part) => part.Length > LongestPart ? part[..LongestPart] + "..." : part;

    private void AddTable(TableSyntaxBase table)
    {
        string? path = PathOf(table.Name);
        if (path is null)
        {
            return;
        }

        Spot spot = SpotOf(table);
        path = AxisByName(path, spot, table is TableArraySyntax ? "[[{0}]]" : "[{0}]");
        bool isList = Array.Exists(ScenarioKeys.Lists, list => list == path);
        if (table is TableArraySyntax && isList)
        {
            AddItem(path, table.Items.ToArray(), spot);
            return;
        }

        if (table is TableArraySyntax || isList || InList(path))
        {
            string found = table is TableArraySyntax ? $"a list [[{path}]]" : $"a single section [{path}]";
            string fix = isList || InList(path) ? $"[[{ListOf(path)}]] with name = \"{path[(path.LastIndexOf('.') + 1)..]}\"" : $"[{path}]";
            document.Problems.Error(spot, path, found, isList || InList(path) ? "a list whose items have names" : "a single section", fix);
            if (isList || InList(path))
            {
                return;
            }
        }

        if (!document.Sections.TryAdd(path, spot))
        {
            document.Problems.Error(spot, path, $"the section [{path}] a second time (first in line {Text(document.Sections[path].Line)})", "each section once", "the keys under the first one");
        }

        foreach (KeyValueSyntax pair in table.Items)
        {
            Add(path, pair, 0);
        }
    }

    // An axis by another name is told once for each header, and read all the same: what else is wrong below it is told too.
    private string AxisByName(string path, Spot spot, string form)
    {
        if (AxisAliases.Path(path) is not { } real)
        {
            return path;
        }

        document.Problems.Error(spot, path, AxisAliases.Found(path.Split('.')[0]), "polar and declination as names of the axes", string.Format(CultureInfo.InvariantCulture, form, real));
        return real;
    }

    private void AddItem(string list, KeyValueSyntax[] pairs, Spot spot)
    {
        if (!document.Items.TryGetValue(list, out List<string>? names))
        {
            document.Items[list] = names = [];
        }

        string? name = pairs.Where(pair => PathOf(pair.Key) == "name").Select(pair => (pair.Value as StringValueSyntax)?.Value).FirstOrDefault();
        string used = ItemNames.Check(document, list, name, names, spot);
        names.Add(used);
        document.Sections[$"{list}.{used}"] = spot;
        foreach (KeyValueSyntax pair in pairs)
        {
            Add($"{list}.{used}", pair, 0);
        }
    }

    private void Add(string section, KeyValueSyntax pair, int depth)
    {
        if (PathOf(pair.Key) is not { } key || pair.Value is null)
        {
            return;
        }

        Spot spot = SpotOf(pair);
        string path = section.Length == 0 ? AxisByName(key, spot, "{0}") : $"{section}.{key}";
        if (pair.Value is InlineTableSyntax table && depth < DeepestTable && ScenarioKeys.Find(path) is null)
        {
            document.Sections.TryAdd(path, spot);
            foreach (InlineTableItemSyntax item in table.Items)
            {
                if (item.KeyValue is not null)
                {
                    Add(path, item.KeyValue, depth + 1);
                }
            }

            return;
        }

        if (pair.Value is ArraySyntax array && Array.Exists(ScenarioKeys.Lists, list => list == path))
        {
            AddInlineItems(path, array, spot);
            return;
        }

        Put(path, section, pair.Value, spot);
    }

    private void AddInlineItems(string list, ArraySyntax array, Spot spot)
    {
        foreach (ArrayItemSyntax item in array.Items)
        {
            if (item.Value is InlineTableSyntax table)
            {
                AddItem(list, [.. table.Items.ToArray().Select(entry => entry.KeyValue).OfType<KeyValueSyntax>()], spot);
            }
            else
            {
                document.Problems.Error(spot, list, "an item that is not a table", "a list whose items have names", $"[[{list}]] with name = \"...\"");
            }
        }
    }

    private void Put(string path, string section, ValueSyntax value, Spot spot)
    {
        (EntryKind kind, string text) = value switch
        {
            StringValueSyntax s => (EntryKind.Text, s.Value ?? ""),
            IntegerValueSyntax i => (EntryKind.Number, NumberOf(i.Token)),
            FloatValueSyntax f => (EntryKind.Number, NumberOf(f.Token)),
            BooleanValueSyntax b => (EntryKind.Flag, b.Value ? "true" : "false"),
            DateTimeValueSyntax d => (EntryKind.Other, d.Token?.Text ?? ""),
            ArraySyntax => (EntryKind.Other, "[...]"),
            _ => (EntryKind.Other, "{...}"),
        };
        if (InList(path) && !document.Sections.ContainsKey(section))
        {
            document.Problems.Error(spot, path, "a key of a list item outside its list", "a list whose items have names", $"[[{ListOf(path)}]] with name = \"...\" and the key below it");
            return;
        }

        if (!document.Entries.TryAdd(path, new Entry(path, kind, text, document.File, spot.Line, spot.Column)))
        {
            document.Problems.Error(spot, path, $"the key a second time (first in line {Text(document.Entries[path].Line)})", "each key once", "one of the two");
        }
    }

    // TOML allows 1_000; the underscores mean nothing.
    private static string NumberOf(SyntaxToken? token) => (token?.Text ?? "").Replace("_", "", StringComparison.Ordinal);

    private static bool InList(string path) => Array.Exists(ScenarioKeys.Lists, list => path.StartsWith(list + ".", StringComparison.Ordinal));

    private static string ListOf(string path) => Array.Find(ScenarioKeys.Lists, list => path == list || path.StartsWith(list + ".", StringComparison.Ordinal)) ?? path;

    private static string Text(int line) => line.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
