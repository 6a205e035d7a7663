using System.Diagnostics;
using System.IO.Compression;

namespace AxisSim.Tests.Docs;

/// <summary>What is given away carries its licenses: the published program and the tool's package.</summary>
[Trait("speed", "slow")]
public sealed class PublishedLicenseTests : IDisposable
{
    private static readonly string[] s_texts = ["LICENSE", "THIRD-PARTY-NOTICES.md", "licenses/Apache-2.0.txt", "licenses/OFL-1.1-Inter.txt", "licenses/SkiaSharp-LICENSE.txt", "licenses/SkiaSharp-THIRD-PARTY-NOTICES.txt"];
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-licenses-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_published_program_has_them_beside_it()
    {
        Dotnet("publish");
        Assert.True(File.Exists(Path.Combine(folder, "axissim.dll")));
        Assert.All(s_texts, name => Assert.True(new FileInfo(Path.Combine(folder, name)) is { Exists: true, Length: > 500 }, name));
        Assert.Equal(File.ReadAllBytes(Repository.PathOf("LICENSE")), File.ReadAllBytes(Path.Combine(folder, "LICENSE")));
    }

    [Fact]
    public void The_package_of_the_tool_has_them()
    {
        Dotnet("pack");
        using ZipArchive package = ZipFile.OpenRead(Assert.Single(Directory.GetFiles(folder, "*.nupkg")));
        Assert.All(s_texts, name => Assert.Single(package.Entries, entry => entry.FullName.StartsWith("tools/", StringComparison.Ordinal) && entry.FullName.EndsWith("/" + name, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_folder_of_license_texts_that_the_notices_name_is_there()
    {
        string notices = File.ReadAllText(Repository.PathOf("THIRD-PARTY-NOTICES.md"));
        Assert.All(s_texts.Where(name => name.StartsWith("licenses/", StringComparison.Ordinal) && name != "licenses/SkiaSharp-LICENSE.txt"), name => Assert.Contains(name, notices, StringComparison.Ordinal));
    }

    private void Dotnet(string verb)
    {
        string configuration = typeof(AxisSim.Cli.Program).Assembly.Location.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}", StringComparison.Ordinal) ? "Release" : "Debug";
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardOutput = true,
            WorkingDirectory = Repository.Root,
            ArgumentList = { verb, "src/AxisSim.Cli", "-c", configuration, "--no-build", "-o", folder, "-v", "q", "-nologo" },
            Environment = { ["MSBUILDDISABLENODEREUSE"] = "1" },
        };
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
    }
}
