using System.Diagnostics;
using static AxisSim.Tests.EndToEnd.MapRuns;

namespace AxisSim.Tests.EndToEnd;

/// <summary>The built program as a process of its own: where it waits, where it cannot write, and where it is killed.</summary>
[Trait("speed", "slow")]
public sealed class ProgramProcessTests : IDisposable
{
    private const int HangUp = 1, Interrupt = 2, KillSignal = 9, Terminate = 15;

    // What does not come in so long never will; the test then fails instead of hanging.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private static readonly string Nominal = Repository.PathOf("scenarios", "nominal.toml");

    private readonly string folder = Directory.CreateTempSubdirectory("axissim-process-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableTheory]
    [InlineData("check PIPE", Interrupt, 130)]
    [InlineData("check PIPE", Terminate, 143)]
    [InlineData("simulate PIPE --out OUT", HangUp, 129)]
    [InlineData("compare NOMINAL --motors PIPE --out OUT", Interrupt, 130)]
    [InlineData("map PIPE --x polar.motion.ramp_time=1..2s --y polar.motion.slew_rate=1..5deg/s", Terminate, 143)]
    [InlineData("merge PLACE --out OUT", Interrupt, 130)]
    public async Task Told_to_end_while_it_waits_for_a_file_it_ends(string line, int signal, int code)
    {
        Skip.If(OperatingSystem.IsWindows(), "pipes and signals of this kind are POSIX");
        string place = Path.Combine(folder, "place"), pipe = line.StartsWith("merge", StringComparison.Ordinal) ? Path.Combine(place, "map.journal") : Path.Combine(folder, "pipe");
        Directory.CreateDirectory(place);
        Assert.Equal(0, Shell($"mkfifo '{pipe}'").Code);
        string[] args = [.. line.Split(' ').Select(arg => arg switch { "PIPE" => pipe, "NOMINAL" => Nominal, "PLACE" => place, "OUT" => Path.Combine(folder, "out"), _ => arg })];
        using Process process = Start(args);

        // A pipe can be opened for writing without waiting once somebody waits to read from it; nothing is ever written.
        using FileStream writer = await Task.Run(() => new FileStream(pipe, FileMode.Open, FileAccess.Write)).WaitAsync(Patience);
        Signal(process, signal);
        await process.WaitForExitAsync().WaitAsync(Patience);
        (int ended, string output, string error) = End(process);
        Assert.Equal((code, ""), (ended, output));
        Assert.Contains("stopped", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder, "out")));
    }

    [SkippableTheory]
    [InlineData("check missing.toml", 2)]
    [InlineData("check NOMINAL", 0)]
    [InlineData("simulat NOMINAL", 2)]
    [InlineData("new NOMINAL", 2)]
    public void A_full_standard_error_does_not_change_the_exit_code(string line, int code)
    {
        Skip.If(!File.Exists("/dev/full"), "there is no full device here");
        Assert.Equal(code, Shell(Program(line) + " 2>/dev/full").Code);
        Assert.Equal(code, Shell(Program(line) + " 2>&-").Code);
        Assert.Equal(2, Shell(Program(line) + " >/dev/full 2>/dev/full").Code);
    }

    [SkippableFact]
    public void Killed_while_it_writes_it_leaves_nothing_that_the_next_run_does_not_remove()
    {
        Skip.If(OperatingSystem.IsWindows(), "signals of this kind are POSIX");
        string place = Path.Combine(folder, "out");
        string[] Temporary() => Directory.Exists(place) ? Directory.GetFiles(place, ".*") : [];
        string[] move = ["simulate", Nominal, "--set", "move.end_polar=20 deg", "--full", "--out", place];
        using Process process = Start(move);
        var clock = Stopwatch.StartNew();
        while (Temporary().Length == 0)
        {
            Assert.True(!process.HasExited && clock.Elapsed < Patience, "nothing was ever under way");
            Thread.Sleep(1);
        }

        Signal(process, KillSignal);
        End(process);
        Assert.Single(Temporary());

        // Another command, with files of other names, into the same folder.
        Assert.Equal(0, Run("curve", Nominal, "--out", place).Code);
        Assert.Empty(Temporary());
        Assert.NotEmpty(Directory.GetFiles(place));
    }

    [SkippableFact]
    public void Every_step_of_a_long_watch_goes_to_the_file_and_not_into_memory()
    {
        Skip.If(!OperatingSystem.IsLinux(), "the greatest size of a process is read as Linux tells it");
        long Peak(string seconds, params string[] more)
        {
            using Process process = Start(["simulate", Nominal, "--set", "move.end_polar=0.1 deg", "--set", $"move.observe={seconds} s", "--out", Path.Combine(folder, seconds), .. more]);
            long peak = 0;
            while (!process.WaitForExit(20))
            {
                try
                {
                    process.Refresh();
                    peak = Math.Max(peak, process.PeakWorkingSet64);
                }
                catch (InvalidOperationException)
                {
                    // It ended between the two.
                }
            }

            (int code, string output, string error) = End(process);
            Assert.True(code == 0, output + error);
            return peak;
        }

        // 20 s are 400,000 steps and 144 MB of text; 22 columns in memory were 70 MB, twice that while a list grew.
        const long Most = 60_000_000;
        long brief = Peak("1"), lengthy = Peak("20", "--full");
        Assert.InRange(lengthy - brief, long.MinValue, Most);
        Assert.InRange(new FileInfo(Path.Combine(folder, "20", "polar-trace.csv")).Length, 100_000_000, 200_000_000);
    }

    private static string Program(string line) =>
        $"dotnet '{typeof(AxisSim.Cli.Program).Assembly.Location}' {line.Replace("NOMINAL", $"'{Nominal}'", StringComparison.Ordinal)}";

    private static (int Code, string Output, string Error) Shell(string line)
    {
        ProcessStartInfo start = new("bash") { RedirectStandardOutput = true, RedirectStandardError = true, ArgumentList = { "-c", line } };
        using Process process = Process.Start(start)!;
        return End(process);
    }
}
