using System.Text.Json;
using static AxisSim.Tests.EndToEnd.InProcess;

namespace AxisSim.Tests.EndToEnd;

/// <summary><c>--settings</c> and <c>--write-scenario</c> of the program.</summary>
public sealed class SettingsProgramTests : IDisposable
{
    private static readonly string Heavy = Repository.PathOf("scenarios", "heavy-reflector.toml");

    private readonly string folder = Directory.CreateTempSubdirectory("axissim-settings-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("simulate")]
    [InlineData("check")]
    [InlineData("curve")]
    [InlineData("balance")]
    [InlineData("envelope")]
    [InlineData("compare")]
    [InlineData("reduction")]
    [InlineData("recommend")]
    [InlineData("map")]
    [InlineData("report")]
    public void Every_command_that_takes_a_scenario_takes_settings_files(string command)
    {
        // A file that will not do is told in the same words by all.
        string file = Write("s.toml", "[polar.motion]\nslew_rat = \"1 deg/s\"\n"), other = Path.Combine(folder, "missing.toml");
        (int code, string output, string error) = Run(command, Heavy, "--settings", file, "--settings", other);
        Assert.Equal(2, code);
        Assert.Contains($"{other}: found no such file; allowed: a settings file", output + error, StringComparison.Ordinal);
        (code, output, error) = Run(command, Heavy, "--settings", file);
        Assert.Equal(2, code);
        Assert.Contains($"{file}:2: polar.motion.slew_rat: found a key that does not exist (did you mean polar.motion.slew_rate?)", output + error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_settings_file_is_in_the_document_and_in_the_commands_to_copy()
    {
        string file = Write("with space.toml", "[polar.motion]\nramp_time = \"0.3 s\"\n[counterweight]\ndistance = \"0.38 m\"\n");
        (int code, string output, _) = Run("simulate", Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), "--settings", file, "--axis", "polar", "--format", "json");
        Assert.Equal(3, code);
        JsonElement scenario = JsonDocument.Parse(output).RootElement.GetProperty("scenario");
        Assert.Equal([file], scenario.GetProperty("settings_files").EnumerateArray().Select(one => one.GetString()!));
        Assert.Empty(scenario.GetProperty("settings").EnumerateArray());
        Assert.Contains($"--settings \"{file}\" --set ", Run("simulate", Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), "--settings", file, "--axis", "polar").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_map_with_a_settings_file_goes_on_and_is_another_one_when_the_file_changes()
    {
        string file = Write("s.toml", "[polar.drive]\nslew_current = \"0.8 A\"\n"), place = Path.Combine(folder, "map");
        string[] line = ["map", Heavy, "--settings", file, "--axis", "polar", "--x", "polar.motion.ramp_time=1..2 s", "--y", "polar.motion.slew_rate=1..2 deg/s", "--grid", "2,2", "--set", "move.end_polar=-15 deg", "--out", place];
        Assert.Equal(0, Run(line).Code);
        Assert.Equal(0, Run([.. line, "--resume"]).Code);
        File.AppendAllText(file, "microsteps = 32\n");
        (int code, _, string error) = Run([.. line, "--resume"]);
        Assert.Equal(2, code);
        Assert.Contains("scenario or settings", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_writes_a_whole_scenario_and_never_over_another()
    {
        string file = Write("s.toml", "[polar.motion]\nramp_time = \"1.7 s\"\n"), made = Path.Combine(folder, "new", "mount.toml");
        string[] line = ["check", Heavy, "--settings", file, "--set", "polar.drive.microsteps=32", "--write-scenario", made];
        (int code, string output, _) = Run(line);
        Assert.Equal(0, code);
        Assert.Contains($"{made} is written", output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        string text = File.ReadAllText(made);
        Assert.Contains($"# from {file}; before: ", text, StringComparison.Ordinal);
        Assert.Contains("microsteps = 32                     # 0.23 arcsec at the axis", text, StringComparison.Ordinal);
        string[] before = ["check", Heavy, "--settings", file, "--set", "polar.drive.microsteps=32", "--format", "json"];
        Assert.Equal(Facts(Run(before).Output), Facts(Run("check", made, "--format", "json").Output));

        (code, output, string error) = Run(line);
        Assert.Equal(2, code);
        Assert.Contains("which is there already; allowed: the name of a file that is not there yet", output + error, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(made));
    }

    [Fact]
    public void Balance_keeps_the_places_and_writes_the_scenario()
    {
        string stalls = Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), place = Path.Combine(folder, "out"), made = Path.Combine(folder, "balanced-mount.toml");
        (int code, string output, string error) = Run("balance", stalls, "--out", place, "--write-scenario", made);
        Assert.True(code == 0, error);
        Assert.Equal(["balance.json", "balance.png", "balance.svg", "balanced.toml"], Directory.GetFiles(place).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.StartsWith("BALANCED", Run("balance", made).Output, StringComparison.Ordinal);
        Assert.StartsWith("BALANCED", Run("balance", stalls, "--settings", Path.Combine(place, "balanced.toml")).Output, StringComparison.Ordinal);
        Assert.Contains(made, output, StringComparison.Ordinal);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length < 400, line));
    }

    [Fact]
    public void The_sheet_and_the_report_say_what_a_settings_file_laid_over()
    {
        string file = Write("s.toml", "[polar.motion]\nslew_rate = \"1.5 deg/s\"\n"), place = Path.Combine(folder, "out");
        Assert.Equal(0, Run("report", Repository.PathOf("scenarios", "nominal.toml"), "--settings", file, "--out", place, "--date", "2026-03-20").Code);
        Assert.Contains("polar.motion.slew_rate=1.5 deg/s", File.ReadAllText(Path.Combine(place, "report.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("simulate", "Needs --out: every step")]
    [InlineData("compare", "Needed: a table of motors")]
    [InlineData("map", "Needs --out: go on")]
    [InlineData("map", "Needs --out: compute part")]
    [InlineData("map", "Needed: the second key")]
    [InlineData("merge", "Needed: a folder for the whole map")]
    [InlineData("reduction", "in place of --from, --to and --points")]
    public void The_help_says_what_an_option_needs(string command, string holds) =>
        Assert.Contains(holds, string.Join(' ', Run(command, "--help").Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);

    [Theory]
    [InlineData("ra", "polar")]
    [InlineData("DEC", "declination")]
    public void An_axis_by_another_name_is_told_its_own(string word, string real)
    {
        (int code, _, string error) = Run("simulate", Heavy, "--axis", word);
        Assert.Equal(2, code);
        Assert.Contains($"--axis: found {word}, the axis that is called {real} here; allowed: polar, declination or both; write: --axis {real}", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_list_that_was_typed_is_not_printed_again()
    {
        string[] typed = [.. Enumerable.Range(1, 20).SelectMany(i => new[] { "--set", $"payload.tube.forward={i} mm" }), "--set", "payload.tube.forward=91 mm"];
        string output = Run(["simulate", Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"), "--axis", "polar", .. typed]).Output;
        Assert.Contains("--set \"counterweight.distance=", output, StringComparison.Ordinal);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length < 400, line));
    }

    private static string Facts(string json) => JsonDocument.Parse(json).RootElement.GetProperty("axes").GetRawText();

    private string Write(string name, string text)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
