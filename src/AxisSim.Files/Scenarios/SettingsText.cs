using System.Text;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Writes settings files: keys and values of a scenario in the form of a scenario, each with a comment on where it comes from.</summary>
public static class SettingsText
{
    private sealed record Line(ScenarioKey Key, string Path, string Literal, string Note)
    {
        public string Section => Path[..^(Key.Name.Length + 1)];
    }

    /// <summary>
    /// All that is laid over a scenario with further settings over it, so that the file alone, laid over the same scenario, gives what was found; items of
    /// lists that the scenario does not have are written whole.
    /// </summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="head">What the file is, a few lines for people.</param>
    /// <param name="found">The further settings.</param>
    public static string Of(Scenario scenario, IReadOnlyList<string> head, IReadOnlyList<NotedSetting> found)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(found);
        HashSet<string> replaced = [.. found.Select(one => one.Path), .. found.SelectMany(one => Alternatives.Of(one.Path))];
        IEnumerable<Line> before = scenario.LaidEntries().Where(entry => !replaced.Contains(entry.Path) && entry.Path.Contains('.', StringComparison.Ordinal))
            .Select(entry => Of(entry.Path, entry.Kind, entry.Text, $"as when this was found: {ScenarioText.Origin(entry)}"));
        Line[] lines = [.. before.Concat(found.Select(one => Of(one.Path, EntryKind.Setting, one.Value, one.Note)))];
        return Text(head, lines);
    }

    /// <summary>What is to be said beside each value where they are written into the scenario, by key.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="found">The further settings.</param>
    public static IReadOnlyDictionary<string, string> Notes(Scenario scenario, IReadOnlyList<NotedSetting> found)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(found);
        var notes = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Entry entry in scenario.LaidEntries())
        {
            notes[entry.Path] = ScenarioText.Origin(entry);
        }

        foreach (NotedSetting one in found)
        {
            notes[one.Path] = one.Note;
        }

        return notes;
    }

    private static Line Of(string path, EntryKind kind, string text, string note)
    {
        ScenarioKey key = ScenarioKeys.Find(path) ?? throw new InvalidOperationException($"{path} is no key of a scenario");
        return new Line(key, path, TomlLiteral.Of(key, kind, text), note);
    }

    // Sections in the order of the table of keys; items of a list as they come.
    private static string Text(IReadOnlyList<string> head, Line[] lines)
    {
        var text = new StringBuilder();
        foreach (string line in head)
        {
            text.Append("# ").Append(line).Append('\n');
        }

        Dictionary<ScenarioKey, int> order = ScenarioKeys.All.Select((key, i) => (key, i)).ToDictionary(pair => pair.key, pair => pair.i);
        foreach (IGrouping<string, Line> section in lines.OrderBy(line => order[line.Key] - PlaceInSection(line.Key)).GroupBy(line => line.Section, StringComparer.Ordinal))
        {
            Line[] keys = [.. section.Where(line => line.Key.Name != "name").OrderBy(line => order[line.Key])];
            string? list = Array.Find(ScenarioKeys.Lists, name => section.Key.StartsWith(name + ".", StringComparison.Ordinal));
            text.Append('\n').Append(list is null ? $"[{section.Key}]\n" : $"[[{list}]]\nname = \"{section.Key[(list.Length + 1)..]}\"\n");
            int width = keys.Length == 0 ? 0 : keys.Max(line => line.Key.Name.Length + line.Literal.Length);
            foreach (Line line in keys)
            {
                text.Append(line.Key.Name).Append(" = ").Append(line.Literal);
                if (line.Note.Length > 0)
                {
                    text.Append(' ', width - line.Key.Name.Length - line.Literal.Length).Append("  # ").Append(line.Note);
                }

                text.Append('\n');
            }
        }

        return text.ToString();
    }

    private static int PlaceInSection(ScenarioKey key) => ScenarioKeys.InSection(key.Section).TakeWhile(other => other != key).Count();
}
