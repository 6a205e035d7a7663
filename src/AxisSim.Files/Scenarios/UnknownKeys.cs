using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Reports keys and sections that do not exist, each with the nearest that does.</summary>
internal sealed class UnknownKeys(ScenarioDocument document)
{
    private static readonly Lazy<HashSet<string>> Known = new(() =>
    {
        var sections = new HashSet<string>(StringComparer.Ordinal) { "" };
        foreach (ScenarioKey key in ScenarioKeys.All)
        {
            for (string section = key.Section; section.Length > 0; section = section.LastIndexOf('.') is int dot and > 0 ? section[..dot] : "")
            {
                sections.Add(section);
            }
        }

        return sections;
    });

    /// <summary>Keys and sections that were suggested, so that they are not reported as missing too.</summary>
    public HashSet<string> Suggested { get; } = new(StringComparer.Ordinal);

    /// <summary>Reports all of them.</summary>
    public void Report()
    {
        var reported = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string section, Spot spot) in document.Sections)
        {
            if (document.Problems.IsFull)
            {
                return;
            }

            if (!document.CopiedSections.Contains(section) && !IsSection(section) && !reported.Any(outer => section.StartsWith(outer + ".", StringComparison.Ordinal)))
            {
                reported.Add(section);
                string? near = NearestName.Of(section, Known.Value.Where(name => name.Length > 0 && !name.Contains('<', StringComparison.Ordinal)));
                ReportOne(null, spot, section, "a section that does not exist", near, near is null ? "" : IsList(near) ? $"[[{near}]]" : $"[{near}]", SectionNames());
            }
        }

        foreach (Entry entry in document.Entries.Values.Where(entry => !entry.Copied && ScenarioKeys.Find(entry.Path) is null))
        {
            if (document.Problems.IsFull)
            {
                return;
            }

            if (reported.Any(section => entry.Path.StartsWith(section + ".", StringComparison.Ordinal) && entry.Kind != EntryKind.Setting))
            {
                continue;
            }

            if (SkyWords.Of(entry.Path) is { } sky)
            {
                Suggested.UnionWith(sky.Suggested);
                document.Problems.Error(entry, sky.Found, sky.Allowed, sky.Fix);
                continue;
            }

            string? near = Nearest(entry.Path);
            string parent = Parent(entry.Path);
            string fix = near is null ? "" : entry.Kind == EntryKind.Setting ? $"--set {near}={entry.Shown}"
                : Parent(near) == parent ? $"{near[(near.LastIndexOf('.') + 1)..]} = {entry.Shown}" : $"{near[(near.LastIndexOf('.') + 1)..]} = {entry.Shown} under [{ScenarioKeys.Pattern(Parent(near))}]";
            string allowed = KeysOf(parent);
            if (allowed.Length == 0)
            {
                // Not even its section is known.
                (allowed, fix) = ("a key of the " + SectionNames(), fix.Length > 0 ? fix : entry.Kind == EntryKind.Setting ? SettingsReader.Example : "");
            }

            ReportOne(entry, default, entry.Path, "a key that does not exist", near, fix, allowed);
        }
    }

    private static bool IsSection(string section) => Known.Value.Contains(section) || Known.Value.Contains(Parent(ScenarioKeys.Pattern(section + ".x")));

    private static bool IsList(string section) => Array.Exists(ScenarioKeys.Lists, list => list == section);

    private static string Parent(string path) => path.LastIndexOf('.') is int dot and > 0 ? path[..dot] : "";

    private static string SectionNames() => "sections site, polar.*, declination.*, payload, counterweight, move, settling, disturbances, tolerances, controller";

    private static string KeysOf(string section)
    {
        string pattern = Parent(ScenarioKeys.Pattern(section.Length == 0 ? "x" : section + ".x"));
        string[] names = [.. ScenarioKeys.InSection(pattern).Select(key => key.Name)];
        return names.Length == 0 ? "" : string.Join(", ", names);
    }

    private void ReportOne(Entry? entry, Spot spot, string key, string found, string? near, string fix, string allowed)
    {
        if (near is not null)
        {
            Suggested.Add(near);
        }

        string text = near is null ? found : $"{found} (did you mean {near}?)";
        if (entry is null)
        {
            document.Problems.Error(spot, key, text, allowed, fix);
        }
        else
        {
            document.Problems.Error(entry, text, allowed, fix);
        }
    }

    // First the right key in a wrong section, then a slip within the section, then a slip anywhere.
    private string? Nearest(string path)
    {
        string parent = Parent(path), name = path[(path.LastIndexOf('.') + 1)..];
        string prefix = parent.Length == 0 ? "" : parent + ".";
        string pattern = Parent(ScenarioKeys.Pattern(prefix + "x"));
        string top = path.Split('.')[0];
        ScenarioKey? moved = ScenarioKeys.All.Where(key => key.Name == name && !key.Path.Contains('<', StringComparison.Ordinal)).OrderBy(key => key.Path.StartsWith(top + ".", StringComparison.Ordinal) ? 0 : 1).FirstOrDefault();
        if (moved is not null)
        {
            return moved.Path;
        }

        string? sibling = NearestName.Of(name, ScenarioKeys.InSection(pattern).Select(key => key.Name));
        return sibling is not null ? prefix + sibling : NearestName.Of(path, Concrete());
    }

    private IEnumerable<string> Concrete() => ScenarioKeys.All.SelectMany(key =>
        Array.Find(ScenarioKeys.Lists, list => key.Path.StartsWith(list + ".<name>", StringComparison.Ordinal)) is { } list
            ? document.ItemsOf(list).Select(item => $"{list}.{item}.{key.Name}")
            : [key.Path]);
}
