namespace AxisSim.Files.Scenarios;

/// <summary>All values of a scenario by path, before any is understood.</summary>
internal sealed class ScenarioDocument(string file)
{
    /// <summary>File name for messages.</summary>
    public string File { get; } = file;

    /// <summary>Values by path.</summary>
    public Dictionary<string, Entry> Entries { get; } = new(StringComparer.Ordinal);

    /// <summary>Names of the items of each list, in order.</summary>
    public Dictionary<string, List<string>> Items { get; } = new(StringComparer.Ordinal);

    /// <summary>Where each section begins.</summary>
    public Dictionary<string, Spot> Sections { get; } = new(StringComparer.Ordinal);

    /// <summary>Sections that the declination axis took over from the polar axis.</summary>
    public HashSet<string> CopiedSections { get; } = new(StringComparer.Ordinal);

    /// <summary>Items of lists that settings files have, by their path.</summary>
    public Dictionary<string, OfferedItem> Offered { get; } = new(StringComparer.Ordinal);

    /// <summary>Whether the declination axis is like the polar axis.</summary>
    public bool IsLike { get; set; }

    /// <summary>Lines that are not TOML.</summary>
    public HashSet<int> BrokenLines { get; } = [];

    /// <summary>Whether sections cannot be trusted because a header is broken.</summary>
    public bool SectionsBroken { get; set; }

    /// <summary>Problems so far.</summary>
    public ProblemList Problems { get; } = new(file);

    /// <summary>Whether the file says anything below a section or path.</summary>
    public bool Mentions(string section) =>
        Sections.Keys.Any(name => Below(name, section)) || Entries.Keys.Any(path => Below(path, section)) || (Items.TryGetValue(section, out List<string>? items) && items.Count > 0);

    /// <summary>Names of the items of a list.</summary>
    public IReadOnlyList<string> ItemsOf(string list) => Items.TryGetValue(list, out List<string>? names) ? names : [];

    /// <summary>What was laid over the file and holds.</summary>
    public IEnumerable<Entry> Laid => Entries.Values.Where(entry => entry.File != File && !entry.Copied);

    private static bool Below(string path, string section) =>
        path.StartsWith(section, StringComparison.Ordinal) && (path.Length == section.Length || path[section.Length] == '.');
}
