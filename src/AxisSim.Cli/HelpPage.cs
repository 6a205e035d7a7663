using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace AxisSim.Cli;

/// <summary>The library's help with the table of exit codes below it.</summary>
internal sealed class HelpPage(HelpAction inner) : SynchronousCommandLineAction
{
    private const int Width = 96;

    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        inner.MaxWidth = Width;
        int code = inner.Invoke(parseResult);
        TextWriter output = parseResult.InvocationConfiguration.Output;
        output.WriteLine("Exit codes:");
        foreach ((int number, string meaning) in ExitCodes.Table)
        {
            output.WriteLine($"  {Say.Count(number),-4} {meaning}");
        }

        output.WriteLine();
        if (parseResult.CommandResult.Command is RootCommand)
        {
            output.WriteLine("A first run:");
            output.WriteLine("  axissim new mount.toml          writes a commented scenario to edit");
            output.WriteLine("  axissim check mount.toml        finds every slip in it at once");
            output.WriteLine("  axissim simulate mount.toml     says whether the move arrives, and why");
        }

        return code;
    }
}
