using System.Diagnostics;
using System.Xml.Linq;
using AxisSim.Tests.EndToEnd;

namespace AxisSim.Tests.Docs;

/// <summary>A person with C# uses Core: the sample runs as the page says, prints what it shows, and leaves nothing behind.</summary>
public sealed class SampleTests
{
    private static readonly string s_page = Repository.PathOf("docs", "library.md");

    /// <summary>With AXISSIM_REFRESH_GOLDEN=1 the page is given what the sample prints now.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void The_sample_prints_what_the_page_shows()
    {
        string[] before = [.. Directory.EnumerateFileSystemEntries(Repository.PathOf("samples")).Order(StringComparer.Ordinal)];
        ProcessStartInfo start = new("dotnet", ["run", "-c", "Release", "samples/move-and-map.cs"]) { WorkingDirectory = Repository.Root, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in new[] { ("DOTNET_CLI_TELEMETRY_OPTOUT", "1"), ("DOTNET_NOLOGO", "1"), ("MSBUILDDISABLENODEREUSE", "1"), ("UseSharedCompilation", "false"), ("DOTNET_CLI_UI_LANGUAGE", "en") })
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        (int code, string printed, string error) = MapRuns.End(process);
        string output = printed.ReplaceLineEndings("\n").TrimEnd('\n');
        Assert.True(code == 0, output + error);
        Assert.Contains("Stalls", output, StringComparison.Ordinal);
        Assert.Equal(before, Directory.EnumerateFileSystemEntries(Repository.PathOf("samples")).Order(StringComparer.Ordinal));
        string page = File.ReadAllText(s_page);
        int from = page.IndexOf("```text\n", StringComparison.Ordinal) + "```text\n".Length, to = page.IndexOf("\n```", from, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
        {
            File.WriteAllText(s_page, page[..from] + output + page[to..]);
            return;
        }

        Assert.Equal(output, page[from..to]);
    }

    /// <summary>Every type and every study that the page names is public in Core.</summary>
    [Fact]
    public void What_the_page_names_is_there()
    {
        string page = File.ReadAllText(s_page);
        string[] names = [.. System.Text.RegularExpressions.Regex.Matches(page, "`([A-Z][A-Za-z]+)(?:\\.[A-Z][A-Za-z]+)?(?:\\(.*?\\))?`").Select(match => match.Groups[1].Value).Distinct()];
        Assert.True(names.Length > 20, $"only {names.Length} names were found");
        string[] known = [.. typeof(Core.Mount.MountSetup).Assembly.GetExportedTypes().SelectMany(type => type.GetMembers().Select(member => member.Name).Append(type.Name)), "ArgumentException", "CancellationToken", "PublishAot"];
        Assert.DoesNotContain(names, name => name != "AxisSim" && !known.Contains(name));
    }

    [Fact]
    public void The_package_says_what_it_is()
    {
        XDocument project = XDocument.Load(Repository.PathOf("src", "AxisSim.Core", "AxisSim.Core.csproj"));
        string Value(string name) => project.Descendants(name).Single().Value;
        string readme = File.ReadAllText(Repository.PathOf("src", "AxisSim.Core", Value("PackageReadmeFile")));
        Assert.Contains("MoveStudy.Run", readme, StringComparison.Ordinal);
        Assert.Equal("MIT", Value("PackageLicenseExpression"));
        Assert.StartsWith("MIT License", File.ReadAllText(Repository.PathOf("LICENSE")), StringComparison.Ordinal);
        Assert.NotEmpty(Value("Description"));
        Assert.DoesNotContain("://", project.ToString() + readme, StringComparison.Ordinal);
    }
}
