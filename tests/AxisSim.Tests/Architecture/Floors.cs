namespace AxisSim.Tests.Architecture;

/// <summary>The folders of a room (docs/architecture.md), floor upon floor: a folder leans on lower floors only, never on its neighbours.</summary>
internal sealed class Floors
{
    /// <summary>What stands in no folder of its room.</summary>
    public const string Top = "";

    private static readonly string[][] s_core =
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

    private static readonly string[][] s_files =
    [
        ["Units"],
        ["Keys"],
        ["Scenarios"],
        ["Tables"],
        ["Maps", "Motors"],
    ];

    private static readonly string[][] s_plots =
    [
        ["Pictures"],
        ["Drawing"],
        ["Comparisons", "Envelopes", "Fronts", "Growth", "Maps", "Moves", "Reductions", "TorqueSpeed"],
        ["Balance"],
        [Top],
    ];

    private static readonly string[][] s_report =
    [
        ["Text"],
        ["Sheets"],
        ["Pages"],
    ];

    private static readonly string[][] s_cli =
    [
        ["Hosting"],
        ["Input"],
        ["Text"],
        ["Json"],
        ["Output"],
        ["Commands"],
        [Top],
    ];

    private readonly string _room;
    private readonly string[][] _floors;

    private Floors(string room, string[][] floors) => (_room, _floors) = (room, floors);

    /// <summary>All rooms with their floors.</summary>
    public static IReadOnlyDictionary<string, Floors> Of { get; } = new[]
    {
        new Floors("AxisSim.Core", s_core),
        new Floors("AxisSim.Files", s_files),
        new Floors("AxisSim.Plots", s_plots),
        new Floors("AxisSim.Report", s_report),
        new Floors("AxisSim.Cli", s_cli),
    }.ToDictionary(floors => floors._room, StringComparer.Ordinal);

    /// <summary>The folder of a namespace of the room; null for other namespaces. The wide forms of the lanes belong to the lanes.</summary>
    public string? Folder(string? space) => space is null || !(space + ".").StartsWith(_room + ".", StringComparison.Ordinal)
        ? null
        : _floors.SelectMany(floor => floor).Where(folder => Holds(folder, space)).MaxBy(folder => folder.Length)
            ?? throw new InvalidOperationException($"{space} has no place among the folders of {_room}: give it a floor in Floors and in docs/architecture.md");

    /// <summary>Whether a folder may lean on another.</summary>
    public bool MayUse(string folder, string other) => folder == other || Floor(other) < Floor(folder);

    private bool Holds(string folder, string space) => folder.Length == 0 ? space == _room : (space + ".").StartsWith($"{_room}.{folder}.", StringComparison.Ordinal);

    private int Floor(string folder) => Array.FindIndex(_floors, floor => floor.Contains(folder));
}
