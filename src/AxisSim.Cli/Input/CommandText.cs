using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Input;

/// <summary>Command lines to copy.</summary>
internal static class CommandText
{
    // Where a long list was typed already, what to add to it is told, not all of it again.
    private const int Longest = 400;

    /// <summary>A command on a file with what is laid over it now and further settings over that; of two for one key the later holds.</summary>
    public static string Of(string command, string file, LaidOver now, IReadOnlyList<string> further) => Of(command, file, now.FileNames, now.Settings, further);

    /// <summary>The same with the settings files by name.</summary>
    public static string Of(string command, string file, IReadOnlyList<string> settingsFiles, IReadOnlyList<string> now, IReadOnlyList<string> further)
    {
        HashSet<string> replaced = [.. further.Select(Key)];
        IEnumerable<string> settings = now.Where(setting => !replaced.Contains(Key(setting))).Concat(further);
        string whole = string.Join(' ', ["axissim", command, Quoted(file), .. settingsFiles.Select(name => $"--settings {Quoted(name)}"), .. settings.Select(Set)]);
        return whole.Length > Longest && further.Count > 0 ? string.Join(' ', further.Select(Set)) : whole;
    }

    /// <summary>A setting as it is written on a command line.</summary>
    public static string Set(string setting) => $"--set \"{setting.Replace("\"", "", StringComparison.Ordinal)}\"";

    /// <summary>A file name for a command line.</summary>
    public static string Quoted(string file) => file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file;

    private static string Key(string setting) => setting.Split('=')[0].Trim();
}
