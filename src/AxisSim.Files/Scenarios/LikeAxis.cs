using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>
/// Carries out <c>like = "polar"</c> of the declination axis: every value of the polar axis that the declination axis does not give
/// itself is taken over. A list of stages that the declination axis gives replaces the whole list. Settings on polar keys come first
/// and so are taken over as well.
/// </summary>
internal static class LikeAxis
{
    private const string From = "polar.";
    private const string To = "declination.";

    /// <summary>Copies what is to be copied.</summary>
    public static void Expand(ScenarioDocument document)
    {
        // A misspelt word is reported as such; copying all the same keeps it from looking like many missing keys.
        if (!document.Entries.TryGetValue("declination.like", out Entry? like))
        {
            return;
        }

        if (!document.Mentions("polar"))
        {
            document.Problems.Error(like, $"{like.Shown} without a polar axis", "like = \"polar\" besides a polar axis", "the sections of the polar axis, or those of the declination axis itself");
            return;
        }

        document.IsLike = true;
        bool ownStages = document.ItemsOf("declination.stages").Count > 0;
        HashSet<string> own = [.. document.Entries.Keys.Where(path => path.StartsWith(To, StringComparison.Ordinal))];
        HashSet<string> voided = [.. own.SelectMany(Alternatives.Of)];
        foreach (Entry entry in document.Entries.Values.Where(entry => entry.Path.StartsWith(From, StringComparison.Ordinal)).ToList())
        {
            string path = To + entry.Path[From.Length..];
            bool stage = path.StartsWith("declination.stages.", StringComparison.Ordinal);
            if (!own.Contains(path) && !voided.Contains(path) && !(stage && ownStages))
            {
                document.Entries[path] = entry with { Path = path, Copied = true };
            }
        }

        foreach ((string section, Spot spot) in document.Sections.Where(pair => pair.Key.StartsWith(From, StringComparison.Ordinal)).ToList())
        {
            if (document.Sections.TryAdd(To + section[From.Length..], spot))
            {
                document.CopiedSections.Add(To + section[From.Length..]);
            }
        }

        if (!ownStages && document.Items.TryGetValue("polar.stages", out List<string>? stages))
        {
            document.Items["declination.stages"] = [.. stages];
        }
    }

    /// <summary>What the declination axis has now of the keys of the polar axis that are to change, as settings of its own.</summary>
    public static IReadOnlyList<string> Kept(ScenarioDocument document, IReadOnlyList<string> polarPaths)
    {
        var kept = new List<string>();
        foreach (string path in document.IsLike ? polarPaths.Where(path => path.StartsWith(From, StringComparison.Ordinal)) : [])
        {
            string own = To + path[From.Length..];
            string[] now = [.. Alternatives.Of(own).Prepend(own).Where(document.Entries.ContainsKey)];
            if (now.Length > 0)
            {
                kept.AddRange(now.Where(name => document.Entries[name].Copied).Select(name => $"{name}={document.Entries[name].Text}"));
            }
            else if (ScenarioKeys.Find(own) is { Default: { Length: > 0 } preset })
            {
                kept.Add($"{own}={preset}");
            }
        }

        return [.. kept.Distinct()];
    }

    /// <summary>Whether a setting is to be applied after the copying.</summary>
    public static bool IsAfter(Entry setting) => setting.Path.StartsWith(To, StringComparison.Ordinal) && setting.Path != "declination.like";

    /// <summary>Whether the document has the axis at all.</summary>
    public static bool Has(ScenarioDocument document, string axis) => document.Mentions(axis) && ScenarioKeys.Axes.Contains(axis);
}
