namespace AxisSim.Files.Tables;

/// <summary>Hidden temporary files: <c>.axissim-(32 hexadecimal digits).tmp</c> in the folder of the file that they are to become.</summary>
/// <remarks>
/// A run that is killed cannot remove its own; the next one that writes into the folder does. A writer holds a lock on its file until the file has its
/// final name, and the system lets go of the lock when the process ends: what can be locked has lost its writer. Where the file system has no locks,
/// a file that has rested for a minute counts as left.
/// </remarks>
internal static class Leftovers
{
    private const int Digits = 32;
    private const int Attempts = 5;
    private const string Mark = ".axissim-";
    private const string Ending = ".tmp";
    private static readonly TimeSpan Rested = TimeSpan.FromMinutes(1);

    /// <summary>A temporary file that nobody has, open and locked; it can be renamed while it is open.</summary>
    public static FileStream Create(string folder)
    {
        for (int attempt = 1; ; attempt++)
        {
            FileStream? stream = null;
            try
            {
                stream = new FileStream(Path.Combine(folder, $"{Mark}{Guid.NewGuid():N}{Ending}"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete);

                // Another run may have taken it for a leftover between its making and its lock.
                if (File.Exists(stream.Name))
                {
                    FileStream made = stream;
                    stream = null;
                    return made;
                }
            }
            catch (IOException error) when (error.GetType() == typeof(IOException) && attempt < Attempts)
            {
                // Locked by such another run; anything else comes again.
            }
            finally
            {
                stream?.Dispose();
            }

            if (attempt >= Attempts)
            {
                throw new IOException("another run takes its temporary files away");
            }
        }
    }

    /// <summary>Removes what killed runs left in a folder.</summary>
    public static void Remove(string folder)
    {
        try
        {
            foreach (string path in Directory.EnumerateFiles(folder, $"{Mark}*{Ending}"))
            {
                if (IsOurs(Path.GetFileName(path)))
                {
                    RemoveOne(path);
                }
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            // Tidying is a courtesy: the file itself can still be written.
        }
    }

    private static bool IsOurs(string name) =>
        name.Length == Mark.Length + Digits + Ending.Length && name[Mark.Length..^Ending.Length].All(char.IsAsciiHexDigitLower);

    private static void RemoveOne(string path)
    {
        try
        {
            bool rested = DateTime.UtcNow - File.GetLastWriteTimeUtc(path) > Rested;
            using var held = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            if (rested || LocksHold(path))
            {
                File.Delete(path);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            // Its writer is alive, or it is not ours to remove.
        }
    }

    // Whether a file that is locked cannot be locked again.
    private static bool LocksHold(string path)
    {
        try
        {
            using var second = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
