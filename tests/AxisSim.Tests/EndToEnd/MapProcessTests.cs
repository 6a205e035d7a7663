using System.Diagnostics;
using System.Globalization;
using AxisSim.Files.Maps;
using Xunit.Abstractions;
using static AxisSim.Tests.EndToEnd.MapRuns;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The built program as a process of its own: killed, told to end, on a full disk, in parallel.</summary>
[Trait("speed", "slow")]
public sealed class MapProcessTests(ITestOutputHelper log) : IDisposable
{
    private const int Kills = 20;
    private const int KillSignal = 9;
    private const int Interrupt = 2;
    private const int Terminate = 15;

    // A journal that does not grow for so long will never; the test then fails instead of hanging.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly string root = Directory.CreateTempSubdirectory("axissim-map-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [SkippableFact]
    public void Killed_at_twenty_moments_and_taken_up_again_it_writes_the_same_bytes()
    {
        Skip.If(OperatingSystem.IsWindows(), "signals of this kind are POSIX");
        string[] map = [.. Short, .. Ranges, "--grid", "61,41", "--full", "--threads", "2", "--out"];
        Assert.Equal(0, Run([.. map, Folder("whole")]).Code);
        long last = Length("whole");

        int seed = Random.Shared.Next();
        log.WriteLine($"seed {seed.ToString(CultureInfo.InvariantCulture)}");
        var random = new Random(seed);
        for (int kill = 0; kill < Kills; kill++)
        {
            // Half of them after new cells have come in, half wherever the start, the reading of the journal or the writing of files is.
            long before = Length("killed"), wanted = random.Next(2) == 0 ? 0 : Math.Min(before + 1 + random.NextInt64(last / Kills), last);
            using Process process = Start([.. map, Folder("killed"), "--resume"]);
            var clock = Stopwatch.StartNew();
            while (!process.HasExited && Length("killed") < wanted)
            {
                Assert.True(clock.Elapsed < Patience, "the journal does not grow");
                Thread.Sleep(1);
            }

            Thread.Sleep(random.Next(wanted == 0 ? 400 : 40));
            if (!process.HasExited)
            {
                Signal(process, KillSignal);
            }

            (int code, _, string error) = End(process);
            log.WriteLine(string.Create(CultureInfo.InvariantCulture, $"from {before} asked {wanted} of {last} bytes, ended {code} with {Length("killed")}: {error.Trim()}"));
            Assert.True(code is 0 or 128 + KillSignal, error);
        }

        (int end, _, string message) = End(Start([.. map, Folder("killed"), "--resume"]));
        Assert.True(end == 0, message);
        Assert.Equal(Written(Folder("whole")), Written(Folder("killed")));
        Assert.DoesNotContain(Directory.GetFiles(Folder("killed")), path => Path.GetFileName(path) is not ("map.csv" or "map.json" or "map.png" or "map.svg" or MapJournal.FileName) && !path.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [SkippableTheory]
    [InlineData(Interrupt, 130)]
    [InlineData(Terminate, 143)]
    public void Told_to_end_it_keeps_what_is_done_and_says_how_to_go_on(int signal, int code)
    {
        Skip.If(OperatingSystem.IsWindows(), "signals of this kind are POSIX");
        using Process process = Start([.. Short, .. Ranges, "--grid", "900,900", "--full", "--out", Folder("map")]);
        var clock = Stopwatch.StartNew();
        long begun = 0;
        while (Length("map") <= begun || begun == 0)
        {
            Assert.False(process.HasExited && clock.Elapsed < Patience, "it ended by itself");
            begun = begun == 0 ? Length("map") : begun;
            Thread.Sleep(5);
        }

        Signal(process, signal);
        (int ended, string output, string error) = End(process);
        Assert.Equal((code, ""), (ended, output));
        Assert.Contains("The same command with --resume goes on from there.", error, StringComparison.Ordinal);
        Assert.Equal([MapJournal.FileName], Directory.GetFiles(Folder("map")).Select(Path.GetFileName));
        JournalContent journal = JournalContent.Read(Path.Combine(Folder("map"), MapJournal.FileName), out _)!;
        Assert.Equal(0, journal.TornBytes);
        Assert.Contains($"stopped with {journal.Cells.ComputedCount().ToString(CultureInfo.InvariantCulture)} cells done", error, StringComparison.Ordinal);
    }

    [SkippableFact]
    [Trait("needs", "bash")]
    public void Without_room_for_its_journal_it_stops_and_loses_nothing()
    {
        Tool("bash");
        string[] map = [.. Short, .. Ranges, "--grid", "21,15", "--full", "--out", Folder("map")];
        // A limit of 4 kB on the size of files; where its signal is ignored, writing fails as on a full disk.
        const string Limited = "trap '' XFSZ; ulimit -f 4; DOTNET_EnableWriteXorExecute=0 exec dotnet \"$@\"";
        (int code, string output, string error) = Shell(Limited, [typeof(AxisSim.Cli.Program).Assembly.Location, .. map]);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("map.journal: found a limit on the size of files", error, StringComparison.Ordinal);
        Assert.Contains("--resume", error, StringComparison.Ordinal);
        Assert.True(JournalContent.Read(Path.Combine(Folder("map"), MapJournal.FileName), out _)!.Cells.ComputedCount() > 0);

        Assert.Equal(0, Run([.. map, "--resume"]).Code);
        Assert.Equal(0, Run([.. map[..^1], Folder("whole")]).Code);
        Assert.Equal(Written(Folder("whole")), Written(Folder("map")));
    }

    [SkippableFact]
    [Trait("needs", "parallel")]
    public void The_parts_of_the_docs_by_gnu_parallel_and_as_a_job_array_merge_into_the_bytes_of_one_run()
    {
        Tool("parallel");
        string[] blocks = Blocks();
        string command = Assert.Single(blocks, block => block.StartsWith("parallel", StringComparison.Ordinal)), task = Assert.Single(blocks, block => block.Contains("SLURM_ARRAY_TASK_ID", StringComparison.Ordinal));
        Directory.CreateDirectory(Folder("by-parallel"));
        Directory.CreateDirectory(Folder("by-array"));
        string whole = Whole(task);

        (int code, string output, string error) = Shell($"cd '{Folder("by-parallel")}' && cp ../mount.toml . && {command}", []);
        Assert.True(code == 0, output + error);
        Assert.Contains("Part 3/4 is done", output, StringComparison.Ordinal);
        Assert.Equal(Written(whole), Written(Path.Combine(Folder("by-parallel"), "whole")));

        (code, output, error) = Shell($"cd '{Folder("by-array")}' && cp ../mount.toml . && for SLURM_ARRAY_TASK_ID in 2 4 1 3; do {task}\ndone; axissim merge part-* --out whole", []);
        Assert.True(code == 0, output + error);
        Assert.Equal(Written(whole), Written(Path.Combine(Folder("by-array"), "whole")));
    }

    // The mount of the docs is the benchmark case with a very short move, and the whole map is the command of one part without its part.
    private string Whole(string task)
    {
        string text = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml"));
        string shorter = System.Text.RegularExpressions.Regex.Replace(text, "(?m)^end_polar = .*$", "end_polar = \"0.1 deg\"");
        shorter = System.Text.RegularExpressions.Regex.Replace(shorter, "(?m)^observe = .*$", "observe = \"0.5 s\"");
        Assert.Contains("\"0.1 deg\"", shorter, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(root, "mount.toml"), shorter);
        string one = task.Replace("--shard \"$SLURM_ARRAY_TASK_ID/4\"", "", StringComparison.Ordinal).Replace("part-$SLURM_ARRAY_TASK_ID", "one", StringComparison.Ordinal);
        (int code, string output, string error) = Shell($"cd '{root}' && {one}", []);
        Assert.True(code == 0, output + error);
        return Folder("one");
    }

    private static string[] Blocks()
    {
        string[] parts = File.ReadAllText(Repository.PathOf("docs", "maps.md")).ReplaceLineEndings("\n").Split("```bash\n");
        return [.. parts.Skip(1).Select(part => part.Split("\n```")[0])];
    }

    private string Folder(string name) => Path.Combine(root, name);

    private long Length(string name)
    {
        FileInfo file = new(Path.Combine(Folder(name), MapJournal.FileName));
        return file.Exists ? file.Length : 0;
    }

    private static (int Code, string Output, string Error) Shell(string line, IEnumerable<string> args)
    {
        ProcessStartInfo start = new("bash") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Repository.Root };
        // "axissim" stands for the program that was built here.
        string program = $"axissim() {{ dotnet '{typeof(AxisSim.Cli.Program).Assembly.Location}' \"$@\"; }}; export -f axissim; ";
        foreach (string arg in new[] { "-c", program + line, "bash" }.Concat(args))
        {
            start.ArgumentList.Add(arg);
        }

        using Process process = Process.Start(start)!;
        return End(process);
    }

    private static void Tool(string name)
    {
        bool there = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, name)));
        Assert.True(there || Environment.GetEnvironmentVariable("CI") != "true", $"{name} is missing: .ci/run installs it");
        Skip.If(!there, $"{name} is not installed");
    }
}
