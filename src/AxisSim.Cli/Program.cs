using System.Runtime.InteropServices;
using System.Text;
using AxisSim.Cli.Output;

namespace AxisSim.Cli;

/// <summary>The program: reads its arguments, runs one command, and turns whatever happens into an exit code.</summary>
internal static class Program
{
    /// <summary>Entry point.</summary>
    public static int Main(string[] args)
    {
        using var stop = new CancellationTokenSource();
        int stoppedCode = ExitCodes.Stopped;
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using PosixSignalRegistration hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Stop);
        void Stop(PosixSignalContext context)
        {
            // The first signal asks for an orderly end; the second ends the process at once, as if nobody listened.
            context.Cancel = !stop.IsCancellationRequested;
            stoppedCode = context.Signal switch { PosixSignal.SIGTERM => ExitCodes.Terminated, PosixSignal.SIGHUP => ExitCodes.HungUp, _ => ExitCodes.Stopped };
            stop.Cancel();
        }

        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
        using var standardError = new ForgivingStream(Console.OpenStandardError);
        using var error = new StreamWriter(standardError, utf8) { NewLine = "\n", AutoFlush = true };
        bool terminal = !Console.IsOutputRedirected;
        return Run(args, new Host(output, error)
        {
            Colour = terminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb"),
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Columns = terminal ? TerminalColumns() : Text.Page.Width,
            Stop = stop.Token,
            StoppedCode = () => stoppedCode,
        });
    }

    /// <summary>Runs one command with its results and problems on two writers; for tests.</summary>
    public static int Run(string[] args, TextWriter output, TextWriter error) => Run(args, new Host(output, error));

    /// <summary>Runs one command.</summary>
    public static int Run(string[] args, Host host)
    {
        try
        {
            int code = CommandTree.Invoke(args, host);
            host.Out.Flush();
            return code;
        }
        catch (Exception error) when (error is OperationCanceledException || (error is AggregateException && host.Stop.IsCancellationRequested))
        {
            host.Error.WriteLine("axissim: stopped. No file was left half-written." + Unfinished(host.Written));
            return host.StoppedCode();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Files are looked after where they are read and written: what comes here is the standard output, and access is denied where it is closed.
            host.Error.WriteLine($"axissim: the results cannot be written: {(error is IOException ? error.Message : "the standard output is closed")}");
            return ExitCodes.BadInput;
        }
#pragma warning disable CA1031 // The one place where everything ends that nothing else caught: one message, no stack trace.
        catch (Exception error)
#pragma warning restore CA1031
        {
            Exception cause = error is AggregateException { InnerException: { } inner } ? inner : error;
            host.Error.WriteLine($"axissim: this should not have happened, and is a fault of the program, not of your input: {cause.GetType().Name}: {cause.Message}");
            host.Error.WriteLine("Please report it with the scenario file, the command line, and what axissim --version says.");
            return ExitCodes.OurFault;
        }
    }

    // Whole files of half a set would be taken for the whole set.
    private static string Unfinished(List<string> files) => files.Count == 0
        ? ""
        : $" The set is not complete; {(files.Count == 1 ? "this file" : "these files")} of it {(files.Count == 1 ? "is" : "are")} whole: {string.Join(", ", files)}";

    private static int TerminalColumns()
    {
        try
        {
            return Console.WindowWidth is > 0 and var columns ? columns : Text.Page.Width;
        }
        catch (IOException)
        {
            return Text.Page.Width;
        }
    }
}
