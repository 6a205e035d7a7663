using System.Text.Json;

namespace AxisSim.Tests.Architecture;

/// <summary>Every package that comes along, by whatever way, has its line in the notices, with the version in use.</summary>
public sealed class NoticeTests
{
    [Fact]
    public void Every_package_has_its_notice()
    {
        string[] lines = File.ReadAllLines(Repository.PathOf("THIRD-PARTY-NOTICES.md"));
        HashSet<(string Name, string Version)> packages = Locked();
        Assert.True(packages.Count > 40, $"only {packages.Count} packages were found"); // else the test would look at nothing
        Assert.DoesNotContain(packages, package => !lines.Any(line => Names(line).Contains(package.Name) && line.Contains($"| {package.Version} |", StringComparison.Ordinal)));
    }

    private static string[] Names(string line) =>
        line.Split('|', StringSplitOptions.TrimEntries).ElementAtOrDefault(1)?.Split(", ") ?? [];

    private static HashSet<(string Name, string Version)> Locked()
    {
        var packages = new HashSet<(string, string)>();
        foreach (string path in Directory.GetFiles(Repository.Root, "packages.lock.json", SearchOption.AllDirectories).Where(SourceFiles.IsOurs))
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path));
            foreach (JsonProperty framework in document.RootElement.GetProperty("dependencies").EnumerateObject())
            {
                foreach (JsonProperty package in framework.Value.EnumerateObject().Where(p => p.Value.GetProperty("type").GetString() != "Project"))
                {
                    packages.Add((package.Name, package.Value.GetProperty("resolved").GetString()!));
                }
            }
        }

        return packages;
    }
}
