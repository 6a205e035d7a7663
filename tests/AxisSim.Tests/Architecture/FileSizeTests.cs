namespace AxisSim.Tests.Architecture;

/// <summary>A file holds one idea, so it stays short; a long one says why.</summary>
public sealed class FileSizeTests
{
    private const int MostLines = 400;

    /// <summary>A file that must be longer gives its reason in a comment that begins so, within its first lines.</summary>
    private const string Reason = "// Longer than 400 lines: ";

    private const int FirstLines = 10;

    [Fact]
    public void No_file_is_long_without_a_reason()
    {
        IReadOnlyList<string> files = SourceFiles.All;
        Assert.True(files.Count > 100, $"only {files.Count} files were found"); // else the test would look at nothing
        Assert.DoesNotContain(files, file => IsLongWithoutReason(File.ReadAllLines(Repository.PathOf(file))));
    }

    [Theory]
    [InlineData(400, "", false)]
    [InlineData(401, "", true)]
    [InlineData(401, Reason, true)]
    [InlineData(401, Reason + "a table that reads only as a whole", false)]
    public void The_rule(int lines, string first, bool broken) =>
        Assert.Equal(broken, IsLongWithoutReason([first, .. Enumerable.Repeat("x", lines - 1)]));

    private static bool IsLongWithoutReason(string[] lines) =>
        lines.Length > MostLines && !lines.Take(FirstLines).Any(line => line.StartsWith(Reason, StringComparison.Ordinal) && line.Length > Reason.Length + 10);
}
