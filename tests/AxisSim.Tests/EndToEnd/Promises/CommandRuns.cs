using System.Collections.Concurrent;
using System.Text.Json;

namespace AxisSim.Tests.EndToEnd.Promises;

/// <summary>What one command printed, with its document.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Text">Its page.</param>
/// <param name="Document">Its JSON document; null for a command that writes none.</param>
/// <param name="Html">Its report; empty for a command that writes none.</param>
internal sealed record CommandRun(int Code, string Text, JsonElement? Document, string Html);

/// <summary>Commands on scenarios, each run once however many tests ask for what it prints.</summary>
internal static class CommandRuns
{
    private static readonly ConcurrentDictionary<string, Lazy<CommandRun>> s_done = new();

    /// <summary>The scenarios: those shipped, and one that gives nothing it need not give.</summary>
    public static TheoryData<string> Cases => [.. Repository.Scenarios.Select(path => Path.GetFileNameWithoutExtension(path)), "upland-refractor"];

    public static string PathOf(string name) =>
        name == "upland-refractor" ? Repository.PathOf("tests", "AxisSim.Tests", "EndToEnd", "Promises", name + ".toml") : Repository.PathOf("scenarios", name + ".toml");

    /// <summary>A command on a scenario.</summary>
    public static CommandRun Of(string command, string name, params string[] options) =>
        s_done.GetOrAdd(string.Join('\n', [command, name, .. options]), _ => new(() => Run([command, PathOf(name), .. options]))).Value;

    /// <summary>A command line as it stands.</summary>
    public static CommandRun Run(string[] args)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("axissim-promises-");
        try
        {
            bool files = args[0] is not ("balance" or "curve" or "check");
            (int code, string output, string error) = InProcess.Run(files ? [.. args, "--out", folder.FullName] : args);
            Assert.True(code is 0 or 3, $"{string.Join(' ', args)}\nexit code {code}\n{error}");
            string? json = Directory.GetFiles(folder.FullName, "*.json").SingleOrDefault(), html = Directory.GetFiles(folder.FullName, "*.html").SingleOrDefault();
            return new CommandRun(code, output, json is null ? null : JsonDocument.Parse(File.ReadAllText(json)).RootElement.Clone(), html is null ? "" : File.ReadAllText(html));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
