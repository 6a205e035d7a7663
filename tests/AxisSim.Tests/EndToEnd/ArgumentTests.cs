using System.Globalization;
using CsCheck;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>Arguments that are no command line: refused in words, never a fault of the program, and nothing is made.</summary>
public sealed class ArgumentTests : IDisposable
{
    private static readonly string Nominal = Repository.PathOf("scenarios", "nominal.toml");
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-arguments-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void An_unknown_option_before_an_empty_argument_is_told() => AssertRefused("--foo is no option of check", "check", Nominal, "--foo", "");

    [Theory]
    [InlineData("--out")]
    [InlineData("--set")]
    [InlineData("--axis")]
    public void An_option_without_its_value_does_not_take_the_next_option_for_it(string option)
    {
        AssertRefused($"{option} lacks its value", "simulate", Nominal, option, "--full");
        AssertRefused($"{option}=--full", "simulate", Nominal, option, "--full");
        AssertRefused($"{option} lacks its value", "simulate", option, "--format", "json", Nominal);
        AssertRefused($"{option} lacks its value", "simulate", Nominal, option, "-h");
        Assert.False(Directory.Exists("--full"));
    }

    [Fact]
    public void A_value_may_begin_with_a_dash_where_it_is_a_number_or_stands_behind_an_equals_sign()
    {
        AssertRefused("from 0.1us to 1000us", "simulate", Nominal, "--step", "-5us");
        AssertRefused("--axis: found \"--full\"", "simulate", Nominal, "--axis=--full");
    }

    [Theory]
    [InlineData("check", "FILE", "--version")]
    [InlineData("--version", "--foo")]
    [InlineData("--version", "now")]
    [InlineData("simulate", "--version")]
    public void The_version_is_asked_for_alone(params string[] args) =>
        AssertRefused("--version stands alone: write axissim --version", [.. args.Select(arg => arg == "FILE" ? Nominal : arg)]);

    [Fact]
    public void No_arguments_at_all_are_a_fault_of_the_program()
    {
        // Samples run side by side, and a refused run may make a folder before it takes it away: each looks at one of its own.
        const string Own = "OWN", missing = $"{Own}/missing.toml", place = $"{Own}/a/b";
        int samples = 0;
        string[] words =
        [
            "simulate", "check", "curve", "balance", "envelope", "compare", "reduction", "recommend", "map", "merge", "report", missing, missing, place, "",
            "-", "--", "=", "--out", "--out=", $"--out={place}", "--set", "--set=", "--set=x", "--axis", "--format", "--step", "--full", "--full=", "--x", "--y=", "--shard", "--resume", "--foo", "--foo=", "--force", "--version", "-5", "'", "\u001b[2J", "@x",
        ];
        Gen.Int[0, words.Length - 1].Select(i => words[i]).Array[0, 6].Sample(
            args =>
            {
                string own = Directory.CreateDirectory(Path.Combine(folder, Interlocked.Increment(ref samples).ToString(CultureInfo.InvariantCulture))).FullName;
                (int code, _, string error) = Run([.. args.Select(arg => arg.Replace(Own, own, StringComparison.Ordinal))]);
                Assert.True(code is 0 or 2, string.Join(' ', args) + "\n" + error);
                Assert.DoesNotContain("should not have happened", error, StringComparison.Ordinal);
                Assert.DoesNotContain('\u001b', error);
                Assert.Empty(Directory.GetFileSystemEntries(own));
            },
            iter: 600);
    }
}
