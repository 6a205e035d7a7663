namespace AxisSim.Tests.Architecture;

/// <summary>Files that people write, without what the build makes.</summary>
internal static class SourceFiles
{
    private static readonly string[] s_made = ["bin", "obj", "BenchmarkDotNet.Artifacts", "TestResults"];

    /// <summary>All C# files of the repository, relative to its root.</summary>
    public static IReadOnlyList<string> All =>
    [
        .. new[] { "src", "tests", "benchmarks", "samples" }
            .SelectMany(folder => Directory.GetFiles(Repository.PathOf(folder), "*.cs", SearchOption.AllDirectories))
            .Where(IsOurs)
            .Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    public static bool IsOurs(string path) =>
        !Path.GetRelativePath(Repository.Root, path).Split('/', '\\').Any(s_made.Contains);
}
