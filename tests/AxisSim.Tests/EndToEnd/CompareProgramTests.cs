using System.Globalization;
using System.Text.Json;
using AxisSim.Cli;
using AxisSim.Tests.Golden;
using AxisSim.Tests.Unit.Core.Comparisons;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The command compare end to end, in process.</summary>
public sealed class CompareProgramTests : IDisposable
{
    private static readonly string Heavy = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml");
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("there is no number at the start of \"x\"", "--ratios", "216,x")]
    [InlineData("a value is missing", "--ratios", "216,,360")]
    [InlineData("a reduction has no unit", "--ratios", "216,360 V")]
    [InlineData("above 0 and up to 100000", "--ratios", "0,216")]
    [InlineData("a comma parts two values and is not a decimal point", "--ratios", "216,216")]
    [InlineData("13 values", "--ratios", "1,2,3,4,5,6,7,8,9,10,11,12,13")]
    [InlineData("a number without its unit", "--voltages", "12,24")]
    [InlineData("is a unit of current", "--voltages", "12,24 A")]
    [InlineData("more than a number in \"12 V\"", "--voltages", "12 V,24 V")]
    [InlineData("above 0 and up to 400", "--voltages", "12,1000 V")]
    [InlineData("from 0 % to 400 %", "--margin", "-10%")]
    [InlineData("from 0 % to 400 %", "--margin", "a third")]
    [InlineData("from 10 % to 200 % of the rated current", "--current-share", "5")]
    [InlineData("from 1 to 1024", "--threads", "0")]
    [InlineData("there is no = in it", "--measured", "curve.csv")]
    [InlineData("there is no file after the =", "--measured", "17 long, 1.8 deg=")]
    [InlineData("a motor that is not in the table", "--measured", "17 lung, 1.8 deg=curve.csv")]
    [InlineData("write: --measured \"17 long, 1.8 deg=curve.csv\"", "--measured", "17 lung, 1.8 deg=curve.csv")]
    [InlineData("no such file", "--measured", "17 long, 1.8 deg=no-such-curve.csv")]
    [InlineData("did you mean --motors?", "--motor", "x.csv")]
    [InlineData("nothing slews", "--set", "move.end_polar=-5 deg")]
    public void Bad_input_is_exit_2_with_a_message_that_helps(string message, string option, string value)
    {
        AssertRefused(message, "compare", Heavy, "--motors", SampleMotors.File, "--axis", "polar", option, value);
    }

    [Fact]
    public void Without_motors_it_says_where_there_are_some()
    {
        (int code, _, string error) = Run("compare", Heavy);
        Assert.Equal(2, code);
        Assert.Contains("--motors catalogues/motors.csv", error, StringComparison.Ordinal);
    }

    [Fact]
    public void All_problems_of_options_table_and_scenario_are_told_at_once_and_nothing_is_written()
    {
        string table = Path.Combine(folder, "m.csv"), place = Path.Combine(folder, "out");
        File.WriteAllText(table, "name,holding_torque_n_m\na,x\n");
        (int code, _, string error) = Run("compare", Heavy, "--motors", table, "--ratios", "x", "--voltages", "1", "--margin", "x", "--set", "polar.motion.ramp=1 s", "--out", place);
        Assert.Equal(2, code);
        foreach (string part in new[] { "--ratios: ", "--voltages: ", "--margin: ", "m.csv:2: holding_torque_n_m: ", "m.csv:1: inductance_mh: ", "polar.motion.ramp", "problems; nothing was computed" })
        {
            Assert.Contains(part, error, StringComparison.Ordinal);
        }

        Assert.False(Directory.Exists(place) && Directory.EnumerateFiles(place).Any());
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Table_document_and_figures_are_written_and_agree()
    {
        string table = Path.Combine(folder, "m.csv"), curve = Path.Combine(folder, "curve.csv"), place = Path.Combine(folder, "out");
        string[] all = File.ReadAllLines(SampleMotors.File);
        File.WriteAllLines(table, all.Where(line => line.StartsWith("name", StringComparison.Ordinal) || line.StartsWith("\"17 long, 0", StringComparison.Ordinal) || line.StartsWith("\"11 short", StringComparison.Ordinal)));
        File.WriteAllText(curve, "speed_rpm,torque_n_m,supply_voltage_v\n60,0.28,24\n300,0.28,24\n600,0.25,24\n900,0.17,24\n1200,0.12,24\n");
        (int code, string output, string error) = Run(
            "compare", Heavy, "--motors", table, "--ratios", "216,360", "--voltages", "24 V", "--axis", "polar", "--measured", $"17 long, 0.9 deg={curve}",
            "--set", "move.end_polar=-11 deg", "--set", "move.end_declination=13 deg", "--set", "settling.tolerance=60 arcsec", "--set", "polar.drive.microsteps=16", "--out", place);
        Assert.True(code == 0, error);
        Assert.Equal(
            ["comparison.csv", "comparison.json", "measured-17-long-0.9-deg.png", "measured-17-long-0.9-deg.svg", "polar-comparison.png", "polar-comparison.svg"],
            Directory.GetFiles(place).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        string[] lines = File.ReadAllLines(Path.Combine(place, "comparison.csv"));
        string[] names = lines[0].Split(',');
        Assert.Equal(5, lines.Length);
        Assert.All(names.Where(name => name.StartsWith("polar_", StringComparison.Ordinal)).Except(["polar_total_reduction", "polar_inertia_ratio", "polar_worm_locks", "polar_limit"]), name => Assert.Matches("_(s|rad|rad_per_s|degC|W)$", name));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(place, "comparison.json")));
        JsonElement best = json.RootElement.GetProperty("candidates")[0];
        Assert.Equal("17 long, 0.9 deg", best.GetProperty("motor").GetString());
        Assert.StartsWith("1,\"17 long, 0.9 deg\",17,ranked,", lines[1], StringComparison.Ordinal);

        // The quoted name holds one comma.
        double total = double.Parse(lines[1].Split(',')[1 + Array.IndexOf(names, "on_target_s")], CultureInfo.InvariantCulture);
        Assert.Equal(best.GetProperty("on_target_seconds").GetDouble(), total);
        Assert.Equal("torque_and_inductance", json.RootElement.GetProperty("measured_curves")[0].GetProperty("kind").GetString());
        Assert.StartsWith(json.RootElement.GetProperty("verdict").GetString()!, output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }
}
