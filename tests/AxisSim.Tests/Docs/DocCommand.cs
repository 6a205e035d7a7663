using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using AxisSim.Cli;

namespace AxisSim.Tests.Docs;

/// <summary>Runs a command of the docs in process, from the root of the repository, with its files in a folder of its own.</summary>
internal static partial class DocCommand
{
    private const string Development = "dotnet run -c Release --project src/AxisSim.Cli -- ";
    private const string Installed = "axissim ";

    private static readonly ConcurrentDictionary<string, Lazy<(int Code, string Output)>> s_done = new();

    /// <summary>Whether the line runs this program.</summary>
    public static bool IsOurs(string line) => Arguments(line) is not null;

    /// <summary>Exit code and everything printed; run once however often it is asked for.</summary>
    public static (int Code, string Output) Run(string line) =>
        s_done.GetOrAdd(Normal(line), key => new Lazy<(int, string)>(() => RunNow(key))).Value;

    private static (int Code, string Output) RunNow(string arguments)
    {
        // Scenario paths in the docs are relative to the repository; no other test depends on the current directory.
        Directory.SetCurrentDirectory(Repository.Root);
        DirectoryInfo folder = Directory.CreateTempSubdirectory("axissim-docs-");
        try
        {
            string[] args = [.. Words().Matches(arguments).Select(word => word.Value.Replace("\"", "", StringComparison.Ordinal))];
            for (int i = 0; i < args.Length; i++)
            {
                if (args[i] == "mount.toml" || (i > 0 && args[i - 1] == "--out"))
                {
                    args[i] = Path.Combine(folder.FullName, args[i]);
                }
            }

            // "new mount.toml" comes before whatever uses the file.
            if (arguments.Contains("mount.toml", StringComparison.Ordinal) && args[0] != "new")
            {
                Program.Run(["new", Path.Combine(folder.FullName, "mount.toml")], TextWriter.Null, TextWriter.Null);
            }

            using StringWriter output = new() { NewLine = "\n" };
            int code = Program.Run(args, output, output);
            return (code, output.ToString().Replace(folder.FullName + Path.DirectorySeparatorChar, "", StringComparison.Ordinal));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Normal(string line) => Arguments(line) ?? throw new ArgumentException("not a command of this program", nameof(line));

    private static string? Arguments(string line) =>
        line.StartsWith(Development, StringComparison.Ordinal) ? line[Development.Length..].Trim()
        : line.StartsWith(Installed, StringComparison.Ordinal) ? line[Installed.Length..].Trim()
        : null;

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""")]
    private static partial Regex Words();
}
