using System.Globalization;
using AxisSim.Core.Bounds;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>What the user does not know exactly: used by recommend alone.</summary>
internal static class ToleranceKeys
{
    /// <summary>Keys of the section.</summary>
    public static IReadOnlyList<ScenarioKey> All { get; } =
    [
        Range("imbalance", 0.1, "Imbalance about each axis, plus and minus a share of what the scenario gives. A share of nothing is nothing: give an imbalance that you cannot rule out. The default is common practice, no source."),
        Range("friction", 0.3, "Friction of bearings and seals, dry and viscous. The default is common practice, no source."),
        Range("cold", 0.1, "Factor of cold grease, which acts on bearings and worm. The default is common practice, no source."),
        Range("supply", 0.05, "Supply voltage. The default is common practice, no source."),
        Range("motor_torque", 0.1, "Torque of the motor at a current. The default is common practice, no source."),
        Range("inertia", 0.05, "Inertia about each axis. The default is common practice, no source."),
        Range("damping", 0.5, "Damping of the rotor. The default is common practice, no source."),
        Choice("tolerances.distribution", "uniform", "How values lie within these ranges when mounts are drawn at random: all alike, or normal with the range at two standard deviations. The corners are the ends of the ranges in either case.", "uniform", "normal"),
    ];

    private static ScenarioKey Range(string name, double preset, string doc) => Share(
        $"tolerances.{name}", preset.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"\"{100.0 * preset:0} %\""), Bound.From(0, 0.9), doc);
}
