using System.Runtime.InteropServices;
using System.Text;

namespace AxisSim.Cli;

/// <summary>The program: reads its arguments, runs one command, and turns whatever happens into an exit code.</summary>
internal static class Program
{
    /// <summary>Entry point.</summary>
    public static int Main(string[] args)
    {
        using var stop = new CancellationTokenSource();
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, context =>
        {
            context.Cancel = true;
            stop.Cancel();
        });
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
        using var error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };
        bool terminal = !Console.IsOutputRedirected;
        return Run(args, new Host(output, error)
        {
            Colour = terminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb"),
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Columns = terminal ? TerminalColumns() : Text.Page.Width,
            Stop = stop.Token,
        });
    }

    /// <summary>Runs one command with its results and problems on two writers; for tests.</summary>
    public static int Run(string[] args, TextWriter output, TextWriter error) => Run(args, new Host(output, error));

    /// <summary>Runs one command.</summary>
    public static int Run(string[] args, Host host)
    {
        try
        {
            int code = CommandLine.Invoke(args, host);
            host.Out.Flush();
            return code;
        }
        catch (Exception error) when (error is OperationCanceledException || (error is AggregateException && host.Stop.IsCancellationRequested))
        {
            host.Error.WriteLine("axissim: stopped. No file was left half-written.");
            return ExitCodes.Stopped;
        }
        catch (IOException error)
        {
            host.Error.WriteLine($"axissim: the results cannot be written: {error.Message}");
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
