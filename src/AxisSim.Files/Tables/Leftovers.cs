namespace AxisSim.Files.Tables;

/// <summary>Hidden temporary files: <c>.name.(32 hexadecimal digits).tmp</c> beside the file that they are to become.</summary>
/// <remarks>A run that is killed cannot remove its own; the next one that writes the same name does.</remarks>
internal static class Leftovers
{
    private const int Digits = 32;
    private const string Ending = ".tmp";

    /// <summary>A file under way grows all the time: one that has rested for so long has lost its writer.</summary>
    private static readonly TimeSpan Rested = TimeSpan.FromMinutes(1);

    /// <summary>A temporary name that nobody has.</summary>
    public static string NewName(string name) => $".{name}.{Guid.NewGuid():N}{Ending}";

    /// <summary>Removes what killed runs left of a file.</summary>
    public static void Remove(string folder, string name)
    {
        string start = $".{name}.";
        try
        {
            foreach (FileInfo file in new DirectoryInfo(folder).EnumerateFiles(".*" + Ending))
            {
                bool ours = file.Name.Length == start.Length + Digits + Ending.Length
                    && file.Name.StartsWith(start, StringComparison.Ordinal)
                    && file.Name[start.Length..^Ending.Length].All(char.IsAsciiHexDigitLower);
                if (ours && DateTime.UtcNow - file.LastWriteTimeUtc > Rested)
                {
                    file.Delete();
                }
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            // Tidying is a courtesy: the file itself can still be written.
        }
    }
}
