namespace AxisSim.Tests;

/// <summary>Finds files of the repository from wherever the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    public static IReadOnlyList<string> Scenarios => [.. Directory.GetFiles(PathOf("scenarios"), "*.toml").Order(StringComparer.Ordinal)];

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "AxisSim.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("the tests must run inside the repository");
    }
}
