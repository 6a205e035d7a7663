using System.Text.Json;
using AxisSim.Files.Maps;
using AxisSim.Tests.Golden;
using static AxisSim.Tests.EndToEnd.MapRuns;

namespace AxisSim.Tests.EndToEnd;

/// <summary><c>axissim map</c> and <c>axissim merge</c> end to end, in process.</summary>
public sealed class MapProgramTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("axissim-map-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    [Trait("speed", "slow")]
    public void The_files_do_not_depend_on_threads_or_on_a_stop()
    {
        Assert.Equal(0, Run([.. Short, .. Ranges, "--grid", "13,9", "--threads", "1", "--out", Folder("one")]).Code);
        Assert.Equal(0, Run([.. Short, .. Ranges, "--grid", "13,9", "--threads", "3", "--out", Folder("three")]).Code);
        Assert.Equal(Written(Folder("one")), Written(Folder("three")));

        (int code, string output, string error) = RunStopped([.. Short, .. Ranges, "--grid", "13,9", "--out", Folder("stopped")]);
        Assert.Equal((130, ""), (code, output));
        Assert.Contains("--resume goes on from there", error, StringComparison.Ordinal);
        Assert.Equal([MapJournal.FileName], Names("stopped"));
        Assert.Equal(0, Run([.. Short, .. Ranges, "--grid", "13,9", "--out", Folder("stopped"), "--resume"]).Code);
        Assert.Equal(Written(Folder("one")), Written(Folder("stopped")));
    }

    [Theory]
    [Trait("speed", "slow")]
    [InlineData("margin")]
    [InlineData("duration")]
    public void Nor_do_the_figures_of_other_metrics(string metric)
    {
        string[] map = [.. Short, .. Ranges, "--grid", "4,3", "--metric", metric, "--out"];
        Assert.Equal(0, Run([.. map, Folder("one"), "--threads", "1"]).Code);
        Assert.Equal(0, Run([.. map, Folder("three"), "--threads", "3"]).Code);
        Assert.Equal(130, RunStopped([.. map, Folder("stopped")]).Code);
        Assert.Equal(0, Run([.. map, Folder("stopped"), "--resume"]).Code);
        Assert.Equal(Written(Folder("one")), Written(Folder("three")));
        Assert.Equal(Written(Folder("one")), Written(Folder("stopped")));
        string[] rows = Written(Folder("one")).Csv.TrimEnd('\n').Split('\n')[1..];
        Assert.All(rows.Where(row => row.Contains(",arrives,", StringComparison.Ordinal)), row => Assert.NotEqual("", row.Split(',')[metric == "margin" ? 10 : 9]));
    }

    [Fact]
    public void Csv_and_json_say_the_same_as_the_text()
    {
        (int code, string output, _) = Run([.. Short, .. Ranges, "--grid", "9,7", "--out", Folder("map"), "--format", "json"]);
        Assert.Equal(0, code);
        (string csv, string json, _, _) = Written(Folder("map"));
        Assert.Equal(json, output);
        string[] lines = csv.TrimEnd('\n').Split('\n');
        Assert.Equal("x_polar.motion.ramp_time_s,x_shown_s,y_polar.drive.slew_current_A,y_shown_A,end,computed,failure_s,slew_s,settle_s,duration_s,torque_margin,winding_continuous_degC", lines[0]);
        Assert.Equal(9 * 7, lines.Length - 1);
        JsonElement counts = JsonDocument.Parse(json).RootElement.GetProperty("counts");
        foreach (string end in new[] { "arrives", "stalls" })
        {
            int count = lines.Count(line => line.Contains("," + end + ",", StringComparison.Ordinal));
            Assert.Equal(count, counts.GetProperty(end).GetInt32());
            Assert.True(count > 0);
        }
    }

    [Fact]
    public void A_journal_is_neither_overwritten_nor_mixed()
    {
        string[] map = [.. Short, .. Ranges, "--grid", "5,5", "--out", Folder("map")];
        Assert.Equal(0, Run(map).Code);
        byte[] journal = File.ReadAllBytes(Path.Combine(Folder("map"), MapJournal.FileName));
        (string Csv, string Json, string Svg, string Png) files = Written(Folder("map"));

        Refused("the journal of this very map, with 25 cells done", map);
        Refused("--resume to go on", map);
        Refused("scenario or settings", [.. map, "--set", "polar.worm.teeth=150", "--resume"]);
        Refused("metric (outcome there, margin here)", [.. map, "--metric", "margin", "--resume"]);
        Refused("--x (polar.motion.ramp_time=log 0.004..0.4 s in 5 values there, polar.motion.ramp_time=log 0.004..0.4 s in 6 values here)", [.. Short, .. Ranges, "--grid", "6,5", "--out", Folder("map"), "--resume"]);
        Refused("grid (adaptive there, full here); shard (1/1 there, 2/3 here)", [.. map, "--full", "--shard", "2/3", "--resume"]);
        Refused("step", [.. map, "--step", "20us", "--resume"]);
        Assert.Equal(journal, File.ReadAllBytes(Path.Combine(Folder("map"), MapJournal.FileName)));

        // Going on with what is done writes the same files again.
        File.Delete(Path.Combine(Folder("map"), "map.csv"));
        Assert.Equal(0, Run([.. map, "--resume"]).Code);
        Assert.Equal(files, Written(Folder("map")));
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Parts_merge_into_the_bytes_of_one_run()
    {
        // Currents above twice the rated one are not valid: the first message must be the same whichever part finds it.
        string[] map = [.. Short, "--x", "polar.motion.ramp_time=log 0.004..0.4 s", "--y", "polar.drive.slew_current=0.3..4 A", "--grid", "7,5", "--full"];
        Assert.Equal(0, Run([.. map, "--out", Folder("whole")]).Code);
        for (int part = 1; part <= 3; part++)
        {
            (int code, string output, _) = Run([.. map, "--shard", $"{part}/3", "--out", Folder($"part-{part}")]);
            Assert.Equal(0, code);
            Assert.Contains($"Part {part}/3 is done", output, StringComparison.Ordinal);
            Assert.Equal([MapJournal.FileName], Names($"part-{part}"));
        }

        Assert.Equal(0, Run("merge", Folder("part-2"), Folder("part-3"), Folder("part-1"), "--out", Folder("merged")).Code);
        Assert.Equal(Written(Folder("whole")), Written(Folder("merged")));
        Assert.Contains("times the rated current", Written(Folder("whole")).Json, StringComparison.Ordinal);

        // The name of the file is that of part 1, whatever part comes first.
        File.Copy(Short[1], Path.Combine(root, "copy.toml"));
        Assert.Equal(0, Run([map[0], Path.Combine(root, "copy.toml"), .. map[2..], "--shard", "3/3", "--out", Folder("elsewhere")]).Code);
        Assert.Equal(0, Run("merge", Folder("elsewhere"), Folder("part-1"), Folder("part-2"), "--out", Folder("merged-too")).Code);
        Assert.Equal(Written(Folder("whole")), Written(Folder("merged-too")));

        Refused("no part 3 of 3", "merge", Folder("part-2"), Folder("part-1"), "--out", Folder("x"));
        Refused("part 1/3, which", "merge", Folder("part-1"), Folder("part-2"), Folder("part-1"), Folder("part-3"), "--out", Folder("x"));
        Refused("without a journal of a map", "merge", Folder("merged"), Folder("part-1"), "--out", Folder("x"));
        Refused("no such folder", "merge", Folder("nowhere"), "--out", Folder("x"));
        Refused("--out: found nothing", "merge", Folder("part-1"), Folder("part-2"), Folder("part-3"));
        Refused("no DIR", "merge", "--out", Folder("x"));

        Assert.Equal(0, Run([.. map, "--set", "polar.worm.teeth=150", "--shard", "3/3", "--out", Folder("other")]).Code);
        Refused("scenario or settings", "merge", Folder("part-1"), Folder("part-2"), Folder("other"), "--out", Folder("x"));
        Assert.Equal(130, RunStopped([.. map, "--shard", "3/3", "--out", Folder("undone")]).Code);
        Refused("0 cells done and more to do", "merge", Folder("part-1"), Folder("part-2"), Folder("undone"), "--out", Folder("x"));
        Assert.Equal(0, Run([.. Short, .. Ranges, "--grid", "5,5", "--out", Folder("adaptive")]).Code);
        Refused("whole by itself", "merge", Folder("adaptive"), "--out", Folder("x"));
    }

    [Fact]
    public void Cells_that_are_not_valid_are_an_end_of_their_own()
    {
        (int code, string output, _) = Run([.. Short, "--x", "polar.motion.ramp_time=0.1..0.4 s", "--y", "polar.drive.slew_current=0.5..4 A", "--grid", "3,8"]);
        Assert.Equal(0, code);
        // 3.5 and 4 A are above twice the rated 1.5 A.
        Assert.Matches(@"not valid +6 cells, 25 %", output);
        Assert.Contains("The first of them says: polar.drive.slew_current: found \"3.5 A\" (3.5 A peak, 2.33 times the", Plain(output), StringComparison.Ordinal);
    }

    [Fact]
    public void Cells_that_no_step_can_follow_are_an_end_of_their_own()
    {
        (int code, string output, _) = Run([.. Short, "--x", "polar.motor.rotor_inertia=log 1e-9..100 g*cm^2", "--y", "polar.drive.slew_current=1..1.5 A", "--grid", "2,2"]);
        Assert.Equal(0, code);
        Assert.Matches(@"too fast to simulate +2 cells, 50 %", output);
    }

    [Fact]
    public void The_summary_of_an_earlier_map_does_not_outlive_it()
    {
        string[] map = [.. Short, .. Ranges, "--grid", "3,3", "--out", Folder("map")];
        Assert.Equal(0, Run(map).Code);
        File.Delete(Path.Combine(Folder("map"), MapJournal.FileName));
        Assert.Equal(130, RunStopped([.. map, "--metric", "margin"]).Code);
        Assert.Equal(["map.csv", MapJournal.FileName, "map.png", "map.svg"], Names("map"));
    }

    [Theory]
    [InlineData("every key is there", "polar.motion.ramp_time=0.1..0.4 s", "polar.drive.slew_current=0.5..1.5 A", "That point lies outside the ranges")]
    [InlineData("not in the file", "polar.flexible.share=0.2..0.4", "polar.drive.slew_current=1..2 A", "whole")]
    [InlineData("by default", "polar.drive.damping_share=0.01..0.1", "polar.drive.slew_current=1..2 A", "polar.drive.damping_share 0.05 (by default)")]
    [InlineData("no default", "polar.drive.max_pulse_rate=1..2 MHz", "polar.drive.slew_current=1..2 A", "the file gives no value of polar.drive.max_pulse_rate")]
    public void The_own_point_is_told_as_it_is(string what, string x, string y, string sentence)
    {
        string[] more = what == "not in the file" ? ["--set", "polar.flexible.frequency=8 Hz"] : [];
        (int code, string output, string error) = Run([.. Short, .. more, "--x", x, "--y", y, "--grid", "3,3"]);
        Assert.True(code == 0, error);
        Assert.Contains(sentence == "whole" ? "polar.flexible.share 0.5 (by default)" : sentence, Plain(output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("did you mean polar.motion.ramp_time?", "polar.motion.ramp=0.2..2 s", "polar.drive.slew_current=1..2 A", "")]
    [InlineData("--y \"payload.tube.mass=1..2 kg\"", "polar.motion.ramp_time=0.2..2 s", "payload.tub.mass=1..2 kg", "")]
    [InlineData("the key of --x again", "polar.motion.ramp_time=0.2..2 s", "polar.motion.ramp_time=1..2 s", "")]
    [InlineData("says the same as polar.motion.ramp_time", "polar.motion.ramp_time=0.2..2 s", "polar.motion.acceleration=1..2 deg/s^2", "")]
    [InlineData("--grid: found \"0,5\"", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--grid 0,5")]
    [InlineData("at most 4 million cells", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--grid 9000,9000")]
    [InlineData("--metric settle", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--metric setle")]
    [InlineData("from 1 to 1024", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--threads -1")]
    [InlineData("write: --full --shard 1/2", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--shard 1/2")]
    [InlineData("at most one part for each column", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--full --grid 3,3 --shard 1/4")]
    [InlineData("part I, from 1 to N", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--full --shard 0/4")]
    [InlineData("no [declination] section", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--axis declination")]
    [InlineData("folder of the map to go on with", "polar.motion.ramp_time=0.2..2 s", "polar.drive.slew_current=1..2 A", "--resume")]
    [InlineData("3 problems", "polar.motion.ramp_time=2..1 s", "polar.drive.slew_current=1..2", "--metric x")]
    public void Bad_input_is_told_in_any_culture(string message, string x, string y, string more)
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", message.Contains("payload", StringComparison.Ordinal) ? "heavy-reflector.toml" : "nominal.toml"));
        File.WriteAllText(Path.Combine(root, "mount.toml"), text);
        foreach (string culture in new[] { "", "fr-FR", "tr-TR" })
        {
            (int code, string output, string error) = Cultures.Under(culture, () => Run(["map", Path.Combine(root, "mount.toml"), "--x", x, "--y", y, .. more.Split(' ', StringSplitOptions.RemoveEmptyEntries)]));
            Assert.Equal((2, ""), (code, output));
            Assert.Contains(message, error, StringComparison.Ordinal);
            Assert.DoesNotContain("fault of the program", error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Problems_of_the_file_and_of_the_ranges_are_told_together()
    {
        File.WriteAllText(Path.Combine(root, "bad.toml"), File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml")).Replace("supply_voltage = \"24 V\"", "supply_voltage = \"24\"", StringComparison.Ordinal));
        (int code, _, string error) = Run("map", Path.Combine(root, "bad.toml"), "--x", "polar.motion.ramp_time=2..1 s");
        Assert.Equal(2, code);
        Assert.All(["a number without its unit", "does not rise", "--y: found nothing", "3 problems"], part => Assert.Contains(part, error, StringComparison.Ordinal));
        Refused("no such file", "map", Path.Combine(root, "missing.toml"), "--x", "polar.motion.ramp_time=1..2 s", "--y", "polar.drive.slew_current=1..2 A");
    }

    [Fact]
    public void A_key_that_the_file_lacks_makes_it_whole()
    {
        File.WriteAllText(Path.Combine(root, "open.toml"), System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(Short[1]), "(?m)^ramp_time = .*$", ""));
        (int code, string output, string error) = Run(["map", Path.Combine(root, "open.toml"), .. Short[2..], .. Ranges, "--grid", "3,3"]);
        Assert.True(code == 0, error);
        Assert.StartsWith("MAP: the file gives no value of polar.motion.ramp_time, so it has no point of its own here.", Plain(output), StringComparison.Ordinal);
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private string Folder(string name) => Path.Combine(root, name);

    private string[] Names(string name) => [.. Directory.GetFiles(Folder(name)).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    private static void Refused(string message, params string[] args)
    {
        (int code, string output, string error) = Run(args);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(message, error, StringComparison.Ordinal);
    }
}
