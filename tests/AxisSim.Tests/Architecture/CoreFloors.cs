namespace AxisSim.Tests.Architecture;

/// <summary>The folders of Core (docs/architecture.md), floor upon floor: a folder leans on lower floors only, never on its neighbours.</summary>
internal static class CoreFloors
{
    private const string Root = "AxisSim.Core.";

    private static readonly string[][] s_floors =
    [
        ["Bounds", "Numerics"],
        ["Drives", "Sky"],
        ["Gearing", "Motors", "Payloads"],
        ["Mount"],
        ["Controllers", "Motion"],
        ["Dynamics"],
        ["Stepping.Jobs"],
        ["Stepping.Lanes"],
        ["Stepping"],
        ["Outcomes"],
        ["Batches"],
        ["Questions"],
        ["Studies"],
        ["Envelopes"],
        ["Comparisons", "Maps", "Recommendations", "Reductions"],
    ];

    /// <summary>The folder of a namespace of Core; null for other namespaces. The wide forms of the lanes belong to the lanes.</summary>
    public static string? Folder(string? space) => space is null || !(space + ".").StartsWith(Root, StringComparison.Ordinal)
        ? null
        : s_floors.SelectMany(floor => floor).Where(folder => (space + ".").StartsWith(Root + folder + ".", StringComparison.Ordinal)).MaxBy(folder => folder.Length)
            ?? throw new InvalidOperationException($"{space} has no place among the folders of Core: give it a floor in CoreFloors and in docs/architecture.md");

    /// <summary>Whether a folder may lean on another.</summary>
    public static bool MayUse(string folder, string other) => folder == other || Floor(other) < Floor(folder);

    private static int Floor(string folder) => Array.FindIndex(s_floors, floor => floor.Contains(folder));
}
