namespace AxisSim.Cli.Input;

/// <summary>Command lines to copy.</summary>
internal static class CommandText
{
    /// <summary>A command on a file with the settings of now and further ones laid over them; of two for one key the later holds.</summary>
    public static string Of(string command, string file, IReadOnlyList<string> now, IReadOnlyList<string> further)
    {
        HashSet<string> replaced = [.. further.Select(Key)];
        IEnumerable<string> settings = now.Where(setting => !replaced.Contains(Key(setting))).Concat(further);
        return string.Join(' ', ["axissim", command, Quoted(file), .. settings.Select(Set)]);
    }

    /// <summary>A setting as it is written on a command line.</summary>
    public static string Set(string setting) => $"--set \"{setting.Replace("\"", "", StringComparison.Ordinal)}\"";

    /// <summary>A file name for a command line.</summary>
    public static string Quoted(string file) => file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file;

    private static string Key(string setting) => setting.Split('=')[0].Trim();
}
