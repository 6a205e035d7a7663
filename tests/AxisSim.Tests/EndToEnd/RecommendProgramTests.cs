using System.Text.Json;
using AxisSim.Cli;
using AxisSim.Tests.Golden;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The command recommend end to end, in process.</summary>
public sealed class RecommendProgramTests : IDisposable
{
    private static readonly string Heavy = Repository.PathOf("scenarios", "heavy-reflector.toml");
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("from 1 % to 300 %", "--margin", "0")]
    [InlineData("from 1 % to 300 %", "--margin", "0 %")]
    [InlineData("from 1 % to 300 %", "--margin", "500 %")]
    [InlineData("from 1 % to 300 %", "--margin", "-30%")]
    [InlineData("write: --margin 30%", "--margin", "30")]
    [InlineData("a comma is not a decimal point", "--margin", "0,3")]
    [InlineData("a comma is not a decimal point", "--margin", "32,5 %")]
    [InlineData("no number at its start", "--margin", "much")]
    [InlineData("fastest, quietest, coolest or balanced", "--aim", "cheapest")]
    [InlineData("write: --aim fastest", "--aim", "fastet")]
    [InlineData("from 1 to 100000", "--samples", "0")]
    [InlineData("from 1 to 100000", "--samples", "1.5")]
    [InlineData("from 0 to 2147483647", "--seed", "-1")]
    [InlineData("from 1 to 1024", "--threads", "many")]
    [InlineData("polar, declination or both", "--axis", "azimuth")]
    [InlineData("a share from 0 to 0.9", "--set", "tolerances.imbalance=120 %")]
    [InlineData("a comma is not a decimal point", "--set", "tolerances.friction=12,5 %")]
    [InlineData("did you mean tolerances.friction", "--set", "tolerances.fricton=10 %")]
    [InlineData("\"uniform\" or \"normal\"", "--set", "tolerances.distribution=triangle")]
    [InlineData("did you mean --margin?", "--margn", "30%")]
    public void Bad_input_is_exit_2_with_a_message_that_helps(string message, string option, string value)
    {
        AssertRefused(message, "recommend", Heavy, option, value);
    }

    [Fact]
    public void All_problems_are_reported_at_once_and_nothing_is_written()
    {
        string place = Path.Combine(folder, "out");
        (int code, _, string error) = Run("recommend", Heavy, "--aim", "x", "--margin", "9", "--samples", "0", "--seed", "x", "--threads", "0", "--format", "xml", "--out", place);
        Assert.Equal(2, code);
        Assert.Contains("6 problems", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place) && Directory.EnumerateFiles(place).Any());
    }

    /// <summary>The printed settings, run by simulate, give the verdict and the settling time that recommend said, bit for bit; files, document and text agree.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void What_is_printed_is_what_simulate_says()
    {
        string[] settings = ["--set", "move.end_polar=-11 deg", "--set", "move.end_declination=16 deg", "--set", "tolerances.friction=20 %"];
        (int code, string output, string error) = Run(["recommend", Heavy, .. settings, "--axis", "declination", "--coarse", "--samples", "40", "--aim", "fastest", "--out", folder]);
        Assert.True(code == 0, error);
        Assert.Equal(
            ["declination-front.png", "declination-front.svg", "declination-recommend.csv", "recommend.json", "recommended-settings.txt"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "recommend.json")));
        Assert.Equal("recommendation", json.RootElement.GetProperty("kind").GetString());
        Assert.Equal("fastest", json.RootElement.GetProperty("aim").GetString());
        Assert.Equal(0.2, json.RootElement.GetProperty("tolerances").GetProperty("friction_share").GetDouble());
        string[] recommended = [.. json.RootElement.GetProperty("set").EnumerateArray().Select(one => one.GetString()!)];
        Assert.Equal(6, recommended.Length);
        Assert.All(recommended, one => Assert.Contains($"--set \"{one}\"", output, StringComparison.Ordinal));
        Assert.Equal(recommended.Select(one => $"--set \"{one}\""), File.ReadAllLines(Path.Combine(folder, "recommended-settings.txt")));
        JsonElement axis = json.RootElement.GetProperty("axes")[0], own = axis.GetProperty("own_move");
        Assert.Equal("arrives", own.GetProperty("end").GetString());
        JsonElement chosen = axis.GetProperty("answer").GetProperty("chosen");
        Assert.True(chosen.GetProperty("load_factor").GetDouble() >= 1.3);
        Assert.Equal(0, axis.GetProperty("answer").GetProperty("verified").GetProperty("failures").GetInt32());
        string[][] rows = [.. File.ReadAllLines(Path.Combine(folder, "declination-recommend.csv")).Select(line => line.Split(','))];
        string[] marked = Assert.Single(rows[1..], row => row[0] == "1");
        Assert.Equal(chosen.GetProperty("slew_seconds").GetDouble(), double.Parse(marked[7], System.Globalization.CultureInfo.InvariantCulture));

        string[] again = [.. settings, .. recommended.SelectMany(one => new[] { "--set", one })];
        (int simulated, string outcome, _) = Run(["simulate", Heavy, .. again, "--axis", "declination", "--format", "json"]);
        Assert.Equal(0, simulated);
        using JsonDocument run = JsonDocument.Parse(outcome);
        JsonElement result = run.RootElement.GetProperty("axes")[0].GetProperty("outcome");
        Assert.Equal(own.GetProperty("end").GetString(), result.GetProperty("verdict").GetString());
        Assert.Equal(own.GetProperty("settle_seconds").GetDouble(), result.GetProperty("settling").GetProperty("against_rest_seconds").GetDouble());
        Assert.Equal(own.GetProperty("slew_seconds").GetDouble(), result.GetProperty("slew_seconds").GetDouble());
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Where_nothing_holds_it_says_what_comes_nearest_and_what_cures_and_ends_with_3()
    {
        string stalls = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml");
        string[] line = ["recommend", stalls, "--axis", "polar", "--coarse", "--format", "json"];
        (int code, string output, string error) = Run([.. line, "--threads", "1"]);
        Assert.True(code == 3, error);
        using JsonDocument json = JsonDocument.Parse(output);
        Assert.False(json.RootElement.GetProperty("found").GetBoolean());
        JsonElement axis = json.RootElement.GetProperty("axes")[0];
        Assert.StartsWith("Polar axis: NOTHING HOLDS with a margin of 30 %.", axis.GetProperty("verdict").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, axis.GetProperty("answer").GetProperty("chosen").ValueKind);
        JsonElement balance = axis.GetProperty("answer").GetProperty("sensitivities").EnumerateArray().Single(one => one.GetProperty("change").GetString() == "better_balance");
        Assert.True(balance.GetProperty("greatest_radians_per_second").GetDouble() > 0.0);
        Assert.Equal(output, Run([.. line, "--threads", "2"]).Output);
    }
}
