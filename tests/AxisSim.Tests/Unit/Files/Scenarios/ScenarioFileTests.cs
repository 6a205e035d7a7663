using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Files that cannot be read at all.</summary>
public sealed class ScenarioFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-files-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_missing_file() => Told(Path.Combine(folder, "none.toml"), "no such file", "axissim new");

    [Fact]
    public void A_directory() => Told(folder, "a directory", "a file in it");

    [Fact]
    public void An_empty_name() => Told("", "no such file", "axissim new");

    [Fact]
    public void A_name_that_no_system_takes() => Told("a\0b", "", "");

    [Theory]
    [InlineData("")]
    [InlineData(" \n\t\n")]
    public void An_empty_file(string text) => Told(Written(System.Text.Encoding.UTF8.GetBytes(text)), "an empty file", "axissim new");

    [Fact]
    public void A_file_with_comments_only()
    {
        ScenarioResult result = ScenarioReader.ReadFile(Written("# nothing\n"u8.ToArray()), []);
        Assert.Null(result.Scenario);
        Assert.Contains(result.Problems, problem => problem.Key == "format");
        Assert.Contains(result.Problems, problem => problem.Found == "no axis");
    }

    [Fact]
    public void Text_that_is_not_utf8()
    {
        Problem problem = Told(Written([.. "format = 1\nname = \"caf"u8, 0xE9, .. "\"\n"u8]), "not UTF-8", "saved as UTF-8");
        Assert.Equal(2, problem.Line);
    }

    [Fact]
    public void A_file_of_more_than_a_megabyte() => Told(Written(new byte[(1 << 20) + 1]), "more than 1 MB", "at most 1 MB");

    [SkippableFact]
    public void A_file_without_permission()
    {
        Skip.If(Environment.UserName == "root", "root may read everything");
        Skip.If(OperatingSystem.IsWindows(), "permissions of this kind are POSIX");
        string path = Written("format = 1\n"u8.ToArray());
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.None);
        }

        Told(path, "cannot be read", "");
    }

    [Fact]
    public void A_byte_order_mark_and_windows_line_ends_do_no_harm()
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml")).ReplaceLineEndings("\r\n");
        ScenarioResult result = ScenarioReader.ReadFile(Written([0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(text)]), []);
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Scenario);
    }

    private string Written(byte[] bytes)
    {
        string path = Path.Combine(folder, "mount.toml");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static Problem Told(string path, string found, string fix)
    {
        ScenarioResult result = ScenarioReader.ReadFile(path, []);
        Assert.Null(result.Scenario);
        Problem problem = Assert.Single(result.Problems);
        Assert.Contains(found, problem.Found, StringComparison.Ordinal);
        Assert.Contains(fix, problem.ToString(), StringComparison.Ordinal);
        return problem;
    }
}
