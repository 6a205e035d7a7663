using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>A run that is refused leaves nothing, whatever the command.</summary>
public sealed class RefusalTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-refusal-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("simulate FILE --out OUT --axis hour")]
    [InlineData("simulate missing.toml --out OUT")]
    [InlineData("simulate FILE --out OUT --set polar.motion.slew_rate=1")]
    [InlineData("curve FILE --out OUT --axis declination")]
    [InlineData("envelope FILE --out OUT --ramp 1")]
    [InlineData("compare FILE --out OUT")]
    [InlineData("reduction FILE --out OUT --from 100 --to 10")]
    [InlineData("recommend FILE --out OUT --aim slowest")]
    [InlineData("report FILE --out OUT --date today")]
    [InlineData("map FILE --out OUT --x bad --y polar.motion.slew_rate=1..5deg/s")]
    [InlineData("map FILE --out OUT --x polar.motion.ramp_time=1..2s --y polar.motion.slew_rate=1..5deg/s --axis declination")]
    [InlineData("map missing.toml --out OUT --x polar.motion.ramp_time=1..2s --y polar.motion.slew_rate=1..5deg/s")]
    [InlineData("merge missing --out OUT")]
    [InlineData("new OUT/")]
    [InlineData("new OUT/LONG")]
    [InlineData("simulate FILE --out OUT/LONG")]
    [InlineData("simulate FILE --out OUT/STRANGE")]
    public void No_folder_is_left(string line)
    {
        string place = Path.Combine(folder, "a", "b", "c");
        string[] args =
        [
            .. line.Split(' ').Select(arg => arg.Replace("FILE", Repository.PathOf("scenarios", "nominal.toml"), StringComparison.Ordinal).Replace("OUT", place, StringComparison.Ordinal)
                .Replace("LONG", new string('n', 300), StringComparison.Ordinal).Replace("STRANGE", "a\u001b[2J", StringComparison.Ordinal)),
        ];
        (int code, string output, string error) = Run(args);
        Assert.True(code == 2, output + error);
        Assert.DoesNotContain('\u001b', error);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void What_was_there_stays()
    {
        string kept = Path.Combine(folder, "kept");
        Directory.CreateDirectory(kept);
        AssertRefused("no such folder", "merge", "missing", "--out", kept);
        AssertRefused("no such folder", "merge", "missing", "--out", Path.Combine(kept, "below"));
        Assert.Equal([kept], Directory.GetFileSystemEntries(folder, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void A_name_with_control_characters_is_refused_before_any_file_is_written()
    {
        string place = Path.Combine(folder, "out");
        AssertRefused("name: found", "simulate", Repository.PathOf("scenarios", "nominal.toml"), "--set", "name=a\u0001b", "--out", place);
        AssertRefused("the control character U+0001", "report", Repository.PathOf("scenarios", "nominal.toml"), "--set", "site.name=a\u0001b", "--out", place);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }
}
