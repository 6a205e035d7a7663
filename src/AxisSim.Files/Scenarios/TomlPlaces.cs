using AxisSim.Files.Keys;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace AxisSim.Files.Scenarios;

/// <summary>Where a key stands in the text of a scenario. Offsets count letters of the text from 0; ends are the first letter after.</summary>
/// <param name="Start">Where the key begins.</param>
/// <param name="ValueStart">Where its value begins.</param>
/// <param name="ValueEnd">Where its value ends.</param>
/// <param name="Prefix">What stands before the last part of the key: "motion." of <c>motion.ramp_time</c>.</param>
/// <param name="Inline">Whether it stands in braces within a line.</param>
internal readonly record struct KeyPlace(int Start, int ValueStart, int ValueEnd, string Prefix, bool Inline);

/// <summary>Finds where the keys and the headers of a scenario stand, so that its text can be changed with all else in it kept.</summary>
/// <remarks>For a text that was read without a problem.</remarks>
internal sealed class TomlPlaces
{
    private readonly string text;

    private TomlPlaces(string text) => this.text = text;

    /// <summary>Keys by path.</summary>
    public Dictionary<string, KeyPlace> Keys { get; } = new(StringComparer.Ordinal);

    /// <summary>Ends of headers by section; an item of a list by its name.</summary>
    public Dictionary<string, int> Headers { get; } = new(StringComparer.Ordinal);

    /// <summary>The places of a text.</summary>
    public static TomlPlaces Of(string text)
    {
        var places = new TomlPlaces(text);
        DocumentSyntax tree = SyntaxParser.Parse(text, "scenario", validate: true);
        foreach (KeyValueSyntax pair in tree.KeyValues)
        {
            places.Add("", pair, inline: false);
        }

        foreach (TableSyntaxBase table in tree.Tables)
        {
            places.Add(table);
        }

        return places;
    }

    /// <summary>The first letter of the line after a place, or the end of the text.</summary>
    public int NextLine(int from) => text.IndexOf('\n', from) is int end and >= 0 ? end + 1 : text.Length;

    private void Add(TableSyntaxBase table)
    {
        string path = string.Join('.', Parts(table.Name!));
        KeyValueSyntax[] pairs = table.Items.ToArray();
        if (table is TableArraySyntax)
        {
            path = $"{path}.{Name(pairs)}";
        }

        Headers[path] = table.CloseBracket!.Span.End.Offset + 1;
        foreach (KeyValueSyntax pair in pairs)
        {
            Add(path, pair, inline: false);
        }
    }

    private void Add(string section, KeyValueSyntax pair, bool inline)
    {
        string[] parts = [.. Parts(pair.Key!)];
        string key = string.Join('.', parts), path = section.Length == 0 ? key : $"{section}.{key}";
        switch (pair.Value)
        {
            case InlineTableSyntax table when ScenarioKeys.Find(path) is null:
                Add(path, table);
                break;
            case ArraySyntax array when ScenarioKeys.Lists.Contains(path):
                foreach (ArrayItemSyntax item in array.Items)
                {
                    if (item.Value is InlineTableSyntax table)
                    {
                        Add($"{path}.{Name([.. table.Items.ToArray().Select(entry => entry.KeyValue!)])}", table);
                    }
                }

                break;
            default:
                string prefix = string.Concat(parts[..^1].Select(part => part + "."));
                Keys[path] = new KeyPlace(pair.Span.Start.Offset, pair.Value!.Span.Start.Offset, pair.Value.Span.End.Offset + 1, prefix, inline);
                break;
        }
    }

    private void Add(string path, InlineTableSyntax table)
    {
        foreach (InlineTableItemSyntax item in table.Items)
        {
            Add(path, item.KeyValue!, inline: true);
        }
    }

    private static string? Name(KeyValueSyntax[] pairs) => pairs.Where(pair => Parts(pair.Key!) is ["name"]).Select(pair => (pair.Value as StringValueSyntax)?.Value).FirstOrDefault();

    private static List<string> Parts(KeySyntax key)
    {
        var parts = new List<string> { Part(key.Key!) };
        foreach (DottedKeyItemSyntax item in key.DotKeys)
        {
            parts.Add(Part(item.Key!));
        }

        return parts;
    }

    private static string Part(BareKeyOrStringValueSyntax part) => part is BareKeySyntax bare ? bare.Key!.Text! : ((StringValueSyntax)part).Value!;
}
