namespace AxisSim.Files.Keys;

/// <summary>All keys of a scenario: the one source of the reader, of the template, of the table in the docs and of suggestions.</summary>
public static class ScenarioKeys
{
    /// <summary>The two axes that have keys of their own.</summary>
    internal static readonly string[] Axes = ["polar", "declination"];

    /// <summary>Sections that are lists; their items are named.</summary>
    internal static readonly string[] Lists = ["polar.stages", "declination.stages", "payload", ControllerKeys.List];

    private static readonly Dictionary<string, ScenarioKey> ByPath = All.ToDictionary(key => key.Path, StringComparer.Ordinal);

    /// <summary>All keys in the order of the docs.</summary>
    public static IReadOnlyList<ScenarioKey> All => Every.Keys;

    // A nested class fixes the order of initialisation.
    private static class Every
    {
        internal static readonly IReadOnlyList<ScenarioKey> Keys =
        [
            .. MountKeys.Head, .. AxisKeys.Of("polar"), Like(), .. AxisKeys.Of("declination"), .. MountKeys.Payload, .. MountKeys.Move, .. MountKeys.Disturbances, .. ToleranceKeys.All, .. ControllerKeys.All,
        ];

        private static ScenarioKey Like() =>
            KeyMaker.Choice("declination.like", null, "Take all that is not given here from the polar axis.", "polar") with { Required = false, DefaultInWords = "nothing is copied" };
    }

    /// <summary>The key of a dotted path, in which list items have their own names; null when there is none.</summary>
    public static ScenarioKey? Find(string path) => ByPath.GetValueOrDefault(Pattern(path));

    /// <summary>The path with the names of list items replaced by <c>&lt;name&gt;</c>.</summary>
    internal static string Pattern(string path)
    {
        foreach (string list in Lists)
        {
            if (path.StartsWith(list + ".", StringComparison.Ordinal) && path.LastIndexOf('.') is int dot && dot > list.Length)
            {
                return $"{list}.<name>{path[dot..]}";
            }
        }

        return path;
    }

    /// <summary>The keys of a section pattern such as <c>polar.motor</c>.</summary>
    internal static IEnumerable<ScenarioKey> InSection(string section) => All.Where(key => key.Section == section);

    /// <summary>Keys that an item of a list cannot do without.</summary>
    internal static IEnumerable<ScenarioKey> RequiredOf(string item) => InSection(Pattern($"{item}.x")[..^2]).Where(key => key.Required);
}
