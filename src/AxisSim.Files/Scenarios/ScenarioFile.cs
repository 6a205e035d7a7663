using System.Globalization;
using System.Text;

namespace AxisSim.Files.Scenarios;

/// <summary>Loads the text of a scenario file, or says why that cannot be done.</summary>
internal static class ScenarioFile
{
    /// <summary>Greatest size of a scenario file, bytes: hundreds of times what a scenario needs.</summary>
    public const int GreatestBytes = 1 << 20;

    /// <summary>The text of a scenario; null with a problem.</summary>
    public static string? Load(string path, CancellationToken stop, out Problem? problem) =>
        Load(path, "scenario file", "mount.toml", "axissim new " + (path.Length == 0 ? "mount.toml" : path) + " makes one to start from", stop, out problem);

    /// <summary>The text of a file of some kind; null with a problem.</summary>
    /// <param name="path">File.</param>
    /// <param name="kind">What it is: "scenario file".</param>
    /// <param name="example">A name for such a file.</param>
    /// <param name="missing">What to do where there is none.</param>
    /// <param name="stop">Ends the waiting for a file that does not come, such as a pipe that nobody writes to.</param>
    /// <param name="problem">What stands against reading it.</param>
    public static string? Load(string path, string kind, string example, string missing, CancellationToken stop, out Problem? problem)
    {
        (string? text, problem) = Stoppable.Wait(path, () => (Load(path, kind, example, missing, out Problem? found), found), stop);
        return text;
    }

    private static string? Load(string path, string kind, string example, string missing, out Problem? problem)
    {
        problem = null;
        try
        {
            // The name is printed, and goes into reports and documents.
            if (PlainText.FirstStrange(path) is { } strange)
            {
                problem = About(path, $"a file name with {strange}", $"a {kind} whose name has no control characters", "another name for the file");
                return null;
            }

            if (Directory.Exists(path))
            {
                problem = About(path, "a directory", "a " + kind, "the name of a file in it, such as " + Path.Combine(path, example));
                return null;
            }

            if (!File.Exists(path))
            {
                problem = About(path, "no such file", "a " + kind, missing);
                return null;
            }

            byte[]? bytes = Bytes(path);
            if (bytes is null)
            {
                problem = About(path, "a file of more than 1 MB", $"a {kind} of at most 1 MB", "");
                return null;
            }

            return Decode(path, bytes, out problem);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException or System.Security.SecurityException)
        {
            problem = About(path, "a file that cannot be read (" + error.Message.TrimEnd('.') + ")", $"a {kind} that you may read", "");
            return null;
        }
    }

    /// <summary>The problem of a file without content.</summary>
    public static Problem Empty(string path) => About(path, "an empty file", "a scenario", "axissim new FILE makes one to start from");

    // A pipe or device has no length: read no more than one byte too many.
    private static byte[]? Bytes(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var copy = new MemoryStream();
        byte[] buffer = new byte[1 << 16];
        int count;
        while ((count = stream.Read(buffer)) > 0)
        {
            copy.Write(buffer, 0, count);
            if (copy.Length > GreatestBytes)
            {
                return null;
            }
        }

        return copy.ToArray();
    }

    private static string? Decode(string path, byte[] bytes, out Problem? problem)
    {
        problem = null;
        try
        {
            var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            bool marked = bytes is [0xEF, 0xBB, 0xBF, ..];
            return marked ? strict.GetString(bytes, 3, bytes.Length - 3) : strict.GetString(bytes);
        }
        catch (DecoderFallbackException error)
        {
            int line = 1 + bytes.Take(Math.Max(0, error.Index)).Count(b => b == '\n');
            problem = About(path, string.Create(CultureInfo.InvariantCulture, $"bytes that are not UTF-8 (at byte {error.Index})"), "text in UTF-8", "the file saved as UTF-8") with { Line = line };
            return null;
        }
    }

    private static Problem About(string path, string found, string allowed, string fix) => new(path, 0, 0, "", found, allowed, fix);
}
