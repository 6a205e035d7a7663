namespace AxisSim.Files.Keys;

/// <summary>Names by which people know the two axes of an equatorial mount, other than those of the keys.</summary>
internal static class AxisAliases
{
    private static readonly string[] Polar = ["ra", "right_ascension", "rightascension", "right-ascension", "hour_angle", "ha"];
    private static readonly string[] Declination = ["dec", "decl", "de", "delta"];

    /// <summary>The name that the keys have for an axis; null for a word that is no other name of one.</summary>
    public static string? Of(string word) =>
        Polar.Contains(word, StringComparer.OrdinalIgnoreCase) ? "polar" : Declination.Contains(word, StringComparer.OrdinalIgnoreCase) ? "declination" : null;

    /// <summary>A path with the axis called by its name; null when it is called so already, or names none.</summary>
    public static string? Path(string path)
    {
        string first = path.Split('.')[0];
        return Of(first) is { } real ? real + path[first.Length..] : null;
    }

    /// <summary>What is wrong with another name, in a clause: "ra, the axis that is called polar here".</summary>
    public static string Found(string word) => $"{word}, the axis that is called {Of(word)} here";
}
