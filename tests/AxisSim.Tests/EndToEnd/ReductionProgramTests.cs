using System.Globalization;
using System.Text.Json;
using AxisSim.Cli;
using AxisSim.Tests.Golden;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The command reduction end to end, in process.</summary>
public sealed class ReductionProgramTests : IDisposable
{
    private static readonly string Heavy = Repository.PathOf("scenarios", "heavy-reflector.toml");

    // A short move about both axes.
    private static readonly string[] Short = ["--set", "move.end_polar=-11 deg", "--set", "move.end_declination=13 deg", "--set", "move.observe=3 s", "--axis", "polar"];
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("a reduction is above 0", "--ratios", "216,0")]
    [InlineData("a reduction is above 0", "--ratios", "216,-5")]
    [InlineData("no number at its start", "--ratios", "216,many")]
    [InlineData("a number is missing", "--ratios", "216,,432")]
    [InlineData("a number is missing", "--ratios", "")]
    [InlineData("more than a number", "--ratios", "216 rpm")]
    [InlineData("a reduction twice", "--ratios", "216,5,216")]
    [InlineData("is not a decimal point", "--ratios", "1,5,5")]
    [InlineData("up to 60", "--ratios", "1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25,26,27,28,29,30,31,32,33,34,35,36,37,38,39,40,41,42,43,44,45,46,47,48,49,50,51,52,53,54,55,56,57,58,59,60,61")]
    [InlineData("not a finite number", "--ratios", "216,NaN")]
    [InlineData("to 100000", "--ratios", "1000000")]
    [InlineData("a reduction is above 0", "--from", "0")]
    [InlineData("a reduction is above 0", "--from", "-3")]
    [InlineData("no number at its start", "--from", "low")]
    [InlineData("a comma is not a decimal point", "--to", "1,5")]
    [InlineData("to 100000", "--to", "1e9")]
    [InlineData("ends above its start", "--from", "1000")]
    [InlineData("from 2 to 60", "--points", "1")]
    [InlineData("from 2 to 60", "--points", "61")]
    [InlineData("from 2 to 60", "--points", "eleven")]
    [InlineData("a number without its %", "--margin", "0.3")]
    [InlineData("from 0 % to 90 %", "--margin", "95 %")]
    [InlineData("from 0 % to 90 %", "--margin", "-1 %")]
    [InlineData("no number at its start", "--margin", "some")]
    [InlineData("from 1 to 1024", "--threads", "0")]
    [InlineData("nothing slews", "--set", "move.end_polar=-5 deg")]
    [InlineData("did you mean --ratios?", "--ratio", "100")]
    public void Bad_input_is_exit_2_with_a_message_that_helps(string message, string option, string value)
    {
        AssertRefused(message, "reduction", Heavy, "--axis", "polar", option, value);
    }

    [Fact]
    public void All_problems_are_reported_at_once_and_nothing_is_written()
    {
        string place = Path.Combine(folder, "out");
        (int code, _, string error) = Run("reduction", Heavy, "--ratios", "x", "--points", "0", "--margin", "much", "--threads", "many", "--format", "xml", "--out", place);
        Assert.Equal(2, code);
        Assert.Contains("6 problems", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place) && Directory.EnumerateFiles(place).Any());
    }

    [Fact]
    public void A_list_and_a_range_together_are_refused()
    {
        (int code, _, string error) = Run("reduction", Heavy, "--ratios", "100,200", "--to", "300");
        Assert.Equal(2, code);
        Assert.Contains("either the list or the range", error, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Figure_table_and_document_are_written_and_agree()
    {
        (int code, string output, string error) = Run(["reduction", Heavy, .. Short, "--ratios", "108,432", "--out", folder]);
        Assert.True(code == 0, error);
        Assert.Equal(["polar-reduction.csv", "polar-reduction.png", "polar-reduction.svg", "reduction.json"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        string[][] rows = [.. File.ReadAllLines(Path.Combine(folder, "polar-reduction.csv")).Select(line => line.Split(','))];
        Assert.Equal(["total_reduction", "stage_ratio", "steady_rate_closed_form_rad_per_s", "greatest_safe_rate_rad_per_s"], rows[0][..4]);
        Assert.Equal(["108", "216", "432"], rows[1..].Select(row => row[0]));
        Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "reduction.json")));
        JsonElement axis = json.RootElement.GetProperty("axes")[0];
        JsonElement point = axis.GetProperty("result").GetProperty("points")[1];
        Assert.Equal(216.0, point.GetProperty("facts").GetProperty("total_reduction").GetDouble());
        Assert.Equal(double.Parse(rows[2][3], CultureInfo.InvariantCulture), point.GetProperty("safe_rate_radians_per_second").GetDouble());
        string verdict = axis.GetProperty("verdict").GetString()!;
        Assert.StartsWith(verdict, output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains(verdict[..40], File.ReadAllText(Path.Combine(folder, "polar-reduction.svg")), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Json_is_the_only_thing_on_the_standard_output_and_the_same_on_any_number_of_threads()
    {
        string[] line = ["reduction", Heavy, .. Short, "--from", "150", "--to", "300", "--points", "2", "--format", "json"];
        (int code, string output, _) = Run([.. line, "--threads", "1"]);
        Assert.Equal(0, code);
        using JsonDocument json = JsonDocument.Parse(output);
        Assert.Equal("reduction", json.RootElement.GetProperty("kind").GetString());
        Assert.Equal(output, Run([.. line, "--threads", "2"]).Output);
    }
}
