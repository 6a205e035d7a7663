using System.Globalization;

namespace AxisSim.Files.Scenarios;

/// <summary>Names of list items: they are parts of keys, so they must be there, plain and different.</summary>
internal static class ItemNames
{
    private const string Allowed = "a name of its own: letters, digits, - and _";
    private const int Longest = 40;

    /// <summary>The name to use for an item; when it will not do, a stand-in, so that the rest of the item is still checked.</summary>
    public static string Check(ScenarioDocument document, string list, string? name, List<string> taken, Spot spot)
    {
        string standIn = string.Create(CultureInfo.InvariantCulture, $"#{taken.Count + 1}");
        if (name is null)
        {
            document.Problems.Error(spot, list, "an item without a name", Allowed, "name = \"...\"");
            return standIn;
        }

        if (!IsPlain(name))
        {
            document.Problems.Error(spot, $"{list}.name", $"\"{new Entry("", EntryKind.Other, name, "", 0, 0).Shown}\"", Allowed, $"name = \"{Plain(name)}\"");
            return standIn;
        }

        if (taken.Contains(name))
        {
            document.Problems.Error(spot, $"{list}.{name}", "a second item of this name", Allowed, $"name = \"{name}-2\"");
            return standIn;
        }

        return name;
    }

    /// <summary>Whether a name can be part of a key.</summary>
    public static bool IsPlain(string name) => name.Length is > 0 and <= Longest && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    private static string Plain(string name)
    {
        string plain = string.Concat(name.Where(c => char.IsAsciiLetterOrDigit(c) || c is ' ' or '-' or '_')).Trim().Replace(' ', '-');
        return plain.Length == 0 ? "item" : plain[..Math.Min(plain.Length, Longest)];
    }
}
