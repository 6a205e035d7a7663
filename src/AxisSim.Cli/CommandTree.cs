using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using AxisSim.Cli.Commands;
using AxisSim.Cli.Input;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli;

/// <summary>The tree of commands, and the way from arguments to one of them.</summary>
internal static class CommandTree
{
    /// <summary>Parses and runs.</summary>
    public static int Invoke(string[] args, Host host)
    {
        RootCommand root = Root(host);
        ParseResult parsed = CommandLineParser.Parse(root, args, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
        bool asksOnly = parsed.Action is HelpPage || args is ["--version"];
        if (!asksOnly && ArgumentCheck.Problems(root, parsed, args) is { Count: > 0 } problems)
        {
            foreach (string problem in problems)
            {
                host.Error.WriteLine("axissim: " + PlainText.Visible(problem));
            }

            string command = parsed.CommandResult.Command is RootCommand ? "" : " " + parsed.CommandResult.Command.Name;
            host.Error.WriteLine($"See: axissim{command} --help");
            return ExitCodes.BadInput;
        }

        return parsed.Invoke(new InvocationConfiguration { Output = host.Out, Error = host.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
    }

    private static RootCommand Root(Host host)
    {
        var root = new RootCommand("Simulates a move of a geared telescope mount: does it arrive, how near does it come to stalling, and why.")
        {
            SimulateCommand.Create(host),
            CheckCommand.Create(host),
            NewCommand.Create(host),
            CurveCommand.Create(host),
            BalanceCommand.Create(host),
            EnvelopeCommand.Create(host),
            CompareCommand.Create(host),
            ReductionCommand.Create(host),
            RecommendCommand.Create(host),
            MapCommand.Create(host),
            MergeCommand.Create(host),
            ReportCommand.Create(host),
        };
        HelpOption help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpPage((HelpAction)help.Action!);
        return root;
    }
}
