using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;
using AxisSim.Cli;
using AxisSim.Cli.Hosting;

namespace AxisSim.Tests.EndToEnd;

/// <summary>Runs maps of a very short move, in process or as the built program.</summary>
internal static class MapRuns
{
    /// <summary>A tenth of a degree of the benchmark case: some thousands of steps.</summary>
    public static readonly string[] Short = ["map", Repository.PathOf("scenarios", "nominal.toml"), "--set", "move.end_polar=0.1 deg", "--set", "move.observe=0.5 s"];

    /// <summary>Holds the edge: a ramp of some milliseconds stalls.</summary>
    public static readonly string[] Ranges = ["--x", "polar.motion.ramp_time=log 0.004..0.4 s", "--y", "polar.drive.slew_current=0.3..1.5 A"];

    public static (int Code, string Output, string Error) Run(params string[] args) => InProcess.Run(args);

    public static (int Code, string Output, string Error) RunStopped(params string[] args)
    {
        using StringWriter output = new() { NewLine = "\n" }, error = new() { NewLine = "\n" };
        return (Program.Run(args, new Host(output, error) { Stop = new CancellationToken(canceled: true) }), output.ToString(), error.ToString());
    }

    /// <summary>Starts the built program.</summary>
    public static Process Start(IEnumerable<string> args)
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, StandardErrorEncoding = Encoding.UTF8, WorkingDirectory = Repository.Root };
        start.ArgumentList.Add(typeof(Program).Assembly.Location);
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Process.Start(start)!;
    }

    /// <summary>Waits for the end; both streams are read, so that the program never waits for us.</summary>
    public static (int Code, string Output, string Error) End(Process process)
    {
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    /// <summary>Sends a signal, as a terminal or a system does.</summary>
    public static void Signal(Process process, int signal) => Assert.Equal(0, Kill(process.Id, signal));

    /// <summary>The files of a map as text; the journal's order is not part of the result.</summary>
    public static (string Csv, string Json, string Svg, string Png) Written(string folder)
    {
        string PathOf(string ending) => Path.Combine(folder, "map." + ending);
        return (File.ReadAllText(PathOf("csv")), File.ReadAllText(PathOf("json")), File.ReadAllText(PathOf("svg")), Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(PathOf("png")))));
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
