using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim new FILE</c>: writes a commented scenario to start from.</summary>
internal static class NewCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = new("FILE") { Description = "File to write, such as mount.toml" };
        Option<bool> force = new("--force") { Description = "Replace the file if it is there" };
        var command = new Command("new", "Write a commented scenario to start from") { file, force };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(file), parsed.GetValue(force)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string file, bool force)
    {
        if (!force && File.Exists(file))
        {
            host.Error.WriteLine($"{file}: found a file of this name, which is kept; write: another name, or axissim new {CommandText.Quoted(file)} --force to replace it");
            return ExitCodes.BadInput;
        }

        if (AtomicFile.WriteText(file, ScenarioTemplate.Text) is { } problem)
        {
            host.Error.WriteLine(problem.ToString());
            return ExitCodes.BadInput;
        }

        string quoted = CommandText.Quoted(file);
        host.Out.WriteLine($"{file} is written: a whole scenario with a comment on each key. Put in the figures of your mount, then:");
        host.Out.WriteLine($"  axissim check {quoted}       finds every slip in it at once");
        host.Out.WriteLine($"  axissim simulate {quoted}    says whether the move arrives, and why");
        return ExitCodes.Good;
    }
}
