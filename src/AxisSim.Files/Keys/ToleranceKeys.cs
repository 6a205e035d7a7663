using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>What the user does not know exactly: used by recommend alone.</summary>
internal static class ToleranceKeys
{
    /// <summary>Keys of the section.</summary>
    public static IReadOnlyList<ScenarioKey> All { get; } =
    [
        Range("imbalance", "10 %", "Imbalance about each axis, plus and minus a share of what the scenario gives. A share of nothing is nothing: give an imbalance that you cannot rule out. (default: common practice, no source)"),
        Range("friction", "30 %", "Friction of bearings and seals, dry and viscous. (default: common practice, no source)"),
        Range("cold", "10 %", "Factor of cold grease, which acts on bearings and worm. (default: common practice, no source)"),
        Range("supply", "5 %", "Supply voltage. (default: common practice, no source)"),
        Range("motor_torque", "10 %", "Torque of the motor at a current. (default: common practice, no source)"),
        Range("inertia", "5 %", "Inertia about each axis. (default: common practice, no source)"),
        Choice("tolerances.distribution", "uniform", "How values lie within these ranges when mounts are drawn at random: all alike, or normal with the range at two standard deviations. The corners are the ends of the ranges in either case.", "uniform", "normal"),
    ];

    private static ScenarioKey Range(string name, string preset, string doc) =>
        Share($"tolerances.{name}", preset, $"\"{preset}\"", 0, 0.9, doc);
}
