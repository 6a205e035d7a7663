using System.Globalization;
using System.Text;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>
/// Makes a whole scenario of a file and what is laid over it: each value stands where the file has it, what is new stands in its section, and all else of the
/// text stays, comments and order too. What is made is read again and must say the same, value for value.
/// </summary>
public static class ScenarioText
{
    // At one place lines that end a section go before sections that are new, and both before what stands there.
    private enum EditKind
    {
        Lines,
        Section,
        Within,
    }

    private sealed record Edit(int From, int To, string Text, EditKind Kind = EditKind.Within);

    /// <summary>The text of a scenario with what is laid over it written into it; null with the reason where that cannot be done.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="notes">What is to be said beside a value that is written, by key; others are said to be laid over the file.</param>
    /// <param name="problem">Why it cannot be done.</param>
    public static string? Whole(Scenario scenario, IReadOnlyDictionary<string, string> notes, out Problem? problem)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(notes);
        problem = null;
        ScenarioSource source = scenario.Source ?? throw new InvalidOperationException("only a scenario that was read from a text can be written again");
        ScenarioDocument document = ScenarioReader.Lay(source.Text, source.File, source.Laid), plain = TomlText.Parse(source.Text, source.File);
        string written = new Writer(source.Text, document, plain, notes).Text();
        if (Differs(written, source, document) is not { } where)
        {
            return written;
        }

        problem = new Problem(source.File, 0, 0, where, "a form of the file into which the settings cannot be written", "sections with a header of their own, [polar.motion], one key in a line", "the settings into the file by hand, or --settings each time");
        return null;
    }

    /// <summary>Where a value that is laid over a file comes from.</summary>
    internal static string Origin(Entry entry) => entry.File == SettingsReader.Source ? "by --set" : $"from {entry.File}";

    // The key that reads otherwise, "" for a text that does not read at all; null when all is the same.
    private static string? Differs(string written, ScenarioSource source, ScenarioDocument document)
    {
        ScenarioDocument again = ScenarioReader.Lay(written, source.File, LaidOver.Nothing);
        if (again.Problems.HasErrors)
        {
            return again.Problems.Sorted()[0].Key;
        }

        ValueSet one = new(document), other = new(again);
        one.ReadAll();
        other.ReadAll();
        return document.Entries.Keys.Union(again.Entries.Keys).FirstOrDefault(path => one.Written(path) != other.Written(path) || !one[path].Equals(other[path]))
            ?? document.Items.Keys.Union(again.Items.Keys).FirstOrDefault(list => !document.ItemsOf(list).SequenceEqual(again.ItemsOf(list)));
    }

    private sealed class Writer(string text, ScenarioDocument document, ScenarioDocument plain, IReadOnlyDictionary<string, string> notes)
    {
        private readonly TomlPlaces places = TomlPlaces.Of(text);
        private readonly string end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        private readonly List<Edit> edits = [];

        public string Text()
        {
            // A list of stages of its own replaces that of the polar axis whole.
            bool ownStages = document.IsLike && plain.ItemsOf("declination.stages").Count == 0 && document.Laid.Any(entry => entry.Path.StartsWith("declination.stages.", StringComparison.Ordinal));
            Entry[] laid = [.. document.Entries.Values.Where(entry => (entry.File != document.File && !entry.Copied) || (ownStages && entry.Path.StartsWith("declination.stages.", StringComparison.Ordinal)))];
            foreach (string path in plain.Entries.Keys.Where(path => !document.Entries.ContainsKey(path)))
            {
                Void(places.Keys[path]);
            }

            foreach (Entry entry in laid.Where(entry => places.Keys.ContainsKey(entry.Path)))
            {
                Replace(entry);
            }

            foreach (IGrouping<string, Entry> section in laid.Where(entry => !places.Keys.ContainsKey(entry.Path)).GroupBy(entry => Section(entry.Path), StringComparer.Ordinal))
            {
                Add(section.Key, [.. section.OrderBy(entry => entry.Path.EndsWith(".name", StringComparison.Ordinal) ? 0 : 1)]);
            }

            // From the end on, so that places before stay true; of several at one place the first made comes first.
            var whole = new StringBuilder(text);
            foreach (Edit edit in edits.Select((edit, i) => (edit, i)).OrderByDescending(pair => pair.edit.From).ThenByDescending(pair => pair.edit.Kind).ThenByDescending(pair => pair.i).Select(pair => pair.edit))
            {
                whole.Remove(edit.From, edit.To - edit.From).Insert(edit.From, edit.Text);
            }

            return whole.ToString();
        }

        private static string Section(string path) => path.LastIndexOf('.') is int dot and >= 0 ? path[..dot] : "";

        private static string Name(string path) => path[(path.LastIndexOf('.') + 1)..];

        private static string Literal(Entry entry) => TomlLiteral.Of(ScenarioKeys.Find(entry.Path)!, entry.Kind, entry.Text);

        private string Note(Entry entry) => PlainText.Visible(notes.TryGetValue(entry.Path, out string? note) ? note : entry.Copied ? "as on the polar axis" : Origin(entry));

        // A key that another makes void stays to be seen; within braces there is no room for a comment.
        private void Void(KeyPlace place)
        {
            if (!place.Inline)
            {
                edits.Add(new Edit(place.Start, place.Start, "# "));
                return;
            }

            int from = place.Start, to = place.ValueEnd;
            int comma = Skip(to);
            if (comma < text.Length && text[comma] == ',')
            {
                to = Skip(comma + 1);
            }
            else
            {
                int before = text.LastIndexOfAny([',', '{'], from - 1);
                from = text[before] == ',' && !edits.Exists(edit => edit.From <= before && before < edit.To) ? before : from;
            }

            edits.Add(new Edit(from, to, ""));
        }

        private int Skip(int at)
        {
            while (at < text.Length && text[at] is ' ' or '\t')
            {
                at++;
            }

            return at;
        }

        private void Replace(Entry entry)
        {
            KeyPlace place = places.Keys[entry.Path];
            string literal = Literal(entry), before = text[place.ValueStart..place.ValueEnd];
            if (literal == before)
            {
                return;
            }

            int after = place.ValueEnd;
            if (!place.Inline)
            {
                string note = Note(entry);
                bool told = note.Contains("before:", StringComparison.Ordinal) || before.AsSpan().IndexOfAny('\r', '\n') >= 0;
                edits.Add(new Edit(place.Start, place.Start, $"# {note}{(told ? "" : $"; before: {before.Trim('"')}")}{end}{Indent(place.Start)}"));

                // What stands beside it keeps its column where there is room.
                after = Skip(place.ValueEnd);
                after = after < text.Length && text[after] == '#' ? after : place.ValueEnd;
            }

            int column = after - place.ValueStart;
            edits.Add(new Edit(place.ValueStart, after, after == place.ValueEnd ? literal : literal.PadRight(Math.Max(column, literal.Length + 1))));
        }

        private string Indent(int start)
        {
            int line = start;
            while (line > 0 && text[line - 1] is ' ' or '\t')
            {
                line--;
            }

            return text[line..start];
        }

        private void Add(string section, IReadOnlyList<Entry> entries)
        {
            KeyPlace[] there = [.. places.Keys.Where(pair => Section(pair.Key) == section).Select(pair => pair.Value)];
            if (there.Length > 0)
            {
                KeyPlace last = there.MaxBy(place => place.Start);
                if (last.Inline)
                {
                    edits.Add(new Edit(last.ValueEnd, last.ValueEnd, string.Concat(entries.Select(entry => $", {last.Prefix}{Name(entry.Path)} = {Literal(entry)}"))));
                    return;
                }

                Insert(EditKind.Lines, places.NextLine(last.ValueEnd), Lines(entries, Indent(last.Start) + last.Prefix));
            }
            else if (places.Headers.TryGetValue(section, out int header))
            {
                Insert(EditKind.Lines, places.NextLine(header), Lines(entries, ""));
            }
            else
            {
                string? list = Array.Find(ScenarioKeys.Lists, name => section.StartsWith(name + ".", StringComparison.Ordinal));
                string name = list is not null && entries[0].Path != section + ".name" ? $"name = \"{section[(list.Length + 1)..]}\"{end}" : "";
                Insert(EditKind.Section, Beside(section), end + (list is null ? $"[{section}]" : $"[[{list}]]") + end + name + Lines(entries, ""));
            }
        }

        private string Lines(IEnumerable<Entry> entries, string prefix) => string.Concat(entries.Select(entry => $"{prefix}{Name(entry.Path)} = {Literal(entry)}  # {Note(entry)}{end}"));

        private void Insert(EditKind kind, int at, string lines) => edits.Add(new Edit(at, at, (at > 0 && text[at - 1] != '\n' ? end : "") + lines, kind));

        // Below the last section of the same name or axis; else at the end.
        private int Beside(string section)
        {
            string family = section.Split('.')[0];
            int[] ends =
            [
                .. places.Headers.Where(pair => Family(pair.Key) == family).Select(pair => places.NextLine(pair.Value)),
                .. places.Keys.Where(pair => !pair.Value.Inline && places.Headers.Count > 0 && pair.Value.Start > places.Headers.Values.Min() && Family(pair.Key) == family).Select(pair => places.NextLine(pair.Value.ValueEnd)),
            ];
            return ends.Length > 0 ? ends.Max() : text.Length;
        }

        private static string Family(string path) => path.Split('.')[0];
    }
}
