using System.Text.Json;
using System.Text.RegularExpressions;
using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;
using AxisSim.Cli;
using AxisSim.Tests.Golden;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The command envelope end to end, in process.</summary>
public sealed class EnvelopeProgramTests : IDisposable
{
    private static readonly string Heavy = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml");

    // A short move about both axes.
    private static readonly string[] Short = ["--set", "move.end_polar=-11 deg", "--set", "move.end_declination=13 deg", "--axis", "polar"];
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("a number without its unit", "--ramp", "0.3..6")]
    [InlineData("is a unit of mass", "--ramp", "0.3..6 kg")]
    [InlineData("no number at its start", "--ramp", "..6 s")]
    [InlineData("FROM is not below TO", "--ramp", "6..0.3 s")]
    [InlineData("up to 600 s", "--ramp", "1..6000 s")]
    [InlineData("above 0", "--ramp", "0..6 s")]
    [InlineData("a comma is not a decimal point", "--ramp", "0,3..6 s")]
    [InlineData("from 2 to 200", "--points", "1")]
    [InlineData("from 2 to 200", "--points", "8.5")]
    [InlineData("from 1 to 1024", "--threads", "0")]
    [InlineData("there is no = in it", "--for", "polar.drive.slew_current")]
    [InlineData("there is no key before the =", "--for", "=1,2 A")]
    [InlineData("a value is missing", "--for", "polar.drive.slew_current=0.7,,0.9 A")]
    [InlineData("a value is missing", "--for", "polar.drive.slew_current=")]
    [InlineData("there is no number at its start", "--for", "polar.drive.slew_current=0.7,much A")]
    [InlineData("more than a number before the last value", "--for", "polar.drive.slew_current=0.7 A,0.9 A")]
    [InlineData("is not a decimal point", "--for", "polar.drive.slew_current=0,7,0,9 A")]
    [InlineData("up to 7", "--for", "polar.drive.slew_current=0.1,0.2,0.3,0.4,0.5,0.6,0.7,0.8 A")]
    [InlineData("a number without its unit", "--for", "polar.drive.slew_current=0.7,0.9")]
    [InlineData("times the rated current", "--for", "polar.drive.slew_current=0.7,9 A")]
    [InlineData("did you mean polar.drive.slew_current", "--for", "polar.drive.slew_curent=0.7,0.9 A")]
    [InlineData("an item \"tubus\" that is not there", "--for", "payload.tubus.mass=8,10 kg")]
    [InlineData("write: --for \"payload.tube.mass=8,10 kg\"", "--for", "payload.tub.mass=8,10 kg")]
    [InlineData("varies itself", "--for", "polar.motion.ramp_time=1,2 s")]
    [InlineData("one of a few words", "--for", "polar.motion.shape=1,2")]
    [InlineData("above max_pulse_rate", "--for", "polar.drive.microsteps=16,256")]
    [InlineData("from 0 % to 400 %", "--margin", "500%")]
    [InlineData("a comma is not a decimal point", "--margin", "0,3")]
    [InlineData("nothing slews", "--set", "move.end_polar=-5 deg")]
    [InlineData("did you mean --ramp?", "--rampe", "1 s")]
    public void Bad_input_is_exit_2_with_a_message_that_helps(string message, string option, string value)
    {
        AssertRefused(message, "envelope", Heavy, "--axis", "polar", option, value);
    }

    [Fact]
    public void All_problems_are_reported_at_once_and_nothing_is_written()
    {
        string place = Path.Combine(folder, "out");
        (int code, _, string error) = Run("envelope", Heavy, "--ramp", "x", "--points", "0", "--threads", "many", "--for", "x", "--format", "xml", "--out", place);
        Assert.Equal(2, code);
        Assert.Contains("5 problems", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place) && Directory.EnumerateFiles(place).Any());
    }

    [Fact]
    public void A_key_that_is_wrong_for_every_value_is_told_once()
    {
        (_, _, string error) = Run("envelope", Heavy, "--for", "payload.tubus.mass=8,10,12 kg");
        Assert.Single(error.Split('\n').Where(line => line.StartsWith("--for", StringComparison.Ordinal)).Distinct());
        Assert.Single(error.Split('\n'), line => line.StartsWith("--for", StringComparison.Ordinal));
    }

    [Fact]
    public void A_margin_is_load_that_the_rates_bear_and_the_next_does_not()
    {
        // On paper: imbalance and friction that take two thirds of the torque leave 0.95/1 - 2/3, or six sevenths, of the rest for an inertia of 1.05: a rate of about 0.8.
        (int plainCode, string plain, _) = Run(["envelope", Heavy, .. Short, "--ramp", "0.4 s", "--format", "json"]);
        (int code, string asked, _) = Run(["envelope", Heavy, .. Short, "--ramp", "0.4 s", "--margin", "5%", "--format", "json"]);
        Assert.Equal((0, 0), (plainCode, code));
        using JsonDocument before = JsonDocument.Parse(plain), after = JsonDocument.Parse(asked);
        JsonElement own = after.RootElement.GetProperty("axes")[0].GetProperty("own");
        Assert.Equal(1.05, after.RootElement.GetProperty("axes")[0].GetProperty("load_factor").GetDouble(), 1e-12);
        double rate = own.GetProperty("rate_radians_per_second").GetDouble(), failing = own.GetProperty("first_failing_radians_per_second").GetDouble();
        double without = before.RootElement.GetProperty("axes")[0].GetProperty("own").GetProperty("rate_radians_per_second").GetDouble();
        Assert.InRange(rate, 0.6 * without, 0.95 * without);

        MountSetup mount = ScenarioReader.ReadFile(Heavy, ["move.end_polar=-11 deg", "move.end_declination=13 deg"]).Scenario!.Setup;
        MoveEnd End(double radiansPerSecond) =>
            BatchStudy.Run([new BatchCase(EnvelopeStudy.With(mount.Loaded(MountAxis.Polar, 1.05), MountAxis.Polar, 0.4, radiansPerSecond), MountAxis.Polar)], new BatchOptions())[0].End;
        Assert.Equal(MoveEnd.Arrives, End(rate));
        Assert.Equal(MoveEnd.Stalls, End(failing));
    }

    [Fact]
    public void The_line_to_type_bears_the_margin()
    {
        (int code, string output, _) = Run(["envelope", Heavy, .. Short, "--ramp", "0.4 s", "--margin", "5%"]);
        Assert.Equal(0, code);
        string text = Regex.Replace(output, @"\s+", " ");
        Match line = Regex.Match(text, "and bears a load factor of 1.05; look at margin and heat there: .*?--set \"polar.motion.slew_rate=([0-9.]+) deg/s\"");
        Assert.True(line.Success, output);
        MountSetup mount = ScenarioReader.ReadFile(Heavy, ["move.end_polar=-11 deg", "move.end_declination=13 deg", $"polar.motion.slew_rate={line.Groups[1].Value} deg/s"]).Scenario!.Setup;
        Assert.Equal(MoveEnd.Arrives, BatchStudy.Run([new BatchCase(mount.Loaded(MountAxis.Polar, 1.05), MountAxis.Polar)], new BatchOptions())[0].End);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Figures_table_and_document_are_written_and_agree()
    {
        (int code, string output, string error) = Run(["envelope", Heavy, .. Short, "--ramp", "0.1..0.4 s", "--points", "3", "--for", "payload.spectrograph.mass=3,5 kg", "--out", folder]);
        Assert.True(code == 0, error);
        Assert.Equal(["envelope.json", "polar-envelope.csv", "polar-envelope.png", "polar-envelope.svg"], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        string[][] rows = [.. File.ReadAllLines(Path.Combine(folder, "polar-envelope.csv")).Select(line => line.Split(','))];
        Assert.Equal(
            ["ramp_s", "greatest_safe_rate_3_kg_rad_per_s", "first_failing_rate_3_kg_rad_per_s", "greatest_rate_of_search_3_kg_rad_per_s", "greatest_safe_rate_5_kg_rad_per_s", "first_failing_rate_5_kg_rad_per_s", "greatest_rate_of_search_5_kg_rad_per_s"],
            rows[0]);
        Assert.Equal(["0.1", "0.2", "0.4"], rows[1..].Select(row => row[0]));
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "envelope.json")));
        JsonElement axis = json.RootElement.GetProperty("axes")[0];
        JsonElement rate = axis.GetProperty("curves")[1].GetProperty("rates")[2].GetProperty("rate_radians_per_second");
        Assert.Equal(double.Parse(rows[3][4], System.Globalization.CultureInfo.InvariantCulture), rate.GetDouble());
        Assert.Equal(axis.GetProperty("own").GetProperty("rate_radians_per_second").GetDouble(), rate.GetDouble());
        string verdict = axis.GetProperty("verdict").GetString()!;
        Assert.StartsWith(verdict, output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains(verdict[..40], File.ReadAllText(Path.Combine(folder, "polar-envelope.svg")), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Json_is_the_only_thing_on_the_standard_output_and_the_same_on_any_number_of_threads()
    {
        string[] line = ["envelope", Heavy, .. Short, "--ramp", "0.2 s", "--format", "json"];
        (int code, string output, _) = Run([.. line, "--threads", "1"]);
        Assert.Equal(0, code);
        using JsonDocument json = JsonDocument.Parse(output);
        Assert.Equal("envelope", json.RootElement.GetProperty("kind").GetString());
        Assert.Equal(output, Run([.. line, "--threads", "2"]).Output);
    }
}
