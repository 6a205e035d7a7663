using AxisSim.Core.Bounds;
using AxisSim.Files.Units;

namespace AxisSim.Files.Keys;

/// <summary>Short forms for the table of keys.</summary>
internal static class KeyMaker
{
    /// <summary>A quantity that must be given.</summary>
    public static ScenarioKey Needed(string path, Dimension dimension, string example, Bound bound, string doc) =>
        Quantity(path, dimension, example, bound, doc) with { Required = true };

    /// <summary>A quantity with a default.</summary>
    public static ScenarioKey Given(string path, Dimension dimension, string preset, string example, Bound bound, string doc) =>
        Quantity(path, dimension, example, bound, doc) with { Default = preset };

    /// <summary>A quantity that may be left out; what that means is said in words.</summary>
    public static ScenarioKey Free(string path, Dimension dimension, string without, string example, Bound bound, string doc) =>
        Quantity(path, dimension, example, bound, doc) with { DefaultInWords = without };

    /// <summary>A share of one.</summary>
    public static ScenarioKey Share(string path, string? preset, string example, Bound bound, string doc) => new()
    {
        Path = path, Kind = KeyKind.Quantity, Dimension = Dimension.Share, Example = example, Doc = doc, Bound = bound, Default = preset, Required = preset is null,
    };

    /// <summary>A plain or whole number.</summary>
    public static ScenarioKey Number(string path, KeyKind kind, string? preset, string example, Bound bound, string doc) => new()
    {
        Path = path, Kind = kind, Example = example, Doc = doc, Bound = bound,
        Default = preset, Required = preset is null,
    };

    /// <summary>One of a few words.</summary>
    public static ScenarioKey Choice(string path, string? preset, string doc, params string[] words) => new()
    {
        Path = path, Kind = KeyKind.Choice, Example = $"\"{words[0]}\"", Doc = doc, Choices = words, Default = preset, Required = preset is null,
    };

    /// <summary>Free text.</summary>
    public static ScenarioKey Text(string path, string? preset, string example, string doc) => new()
    {
        Path = path, Kind = KeyKind.Text, Example = $"\"{example}\"", Doc = doc, Default = preset, Required = preset is null,
    };

    private static ScenarioKey Quantity(string path, Dimension dimension, string example, Bound bound, string doc) => new()
    {
        Path = path, Kind = KeyKind.Quantity, Dimension = dimension, Example = $"\"{example}\"", Unit = UnitOf(example, dimension), Doc = doc, Bound = bound,
    };

    // Bounds are in the unit of the example, so that a message speaks the language of the datasheet.
    private static string UnitOf(string example, Dimension dimension)
    {
        string unit = UnitSpelling.Plain(example[NumberText.Length(example)..]);
        return UnitTable.Find(dimension, unit) is null ? throw new ArgumentException($"the example {example} has no unit of the small table", nameof(example)) : unit;
    }
}
