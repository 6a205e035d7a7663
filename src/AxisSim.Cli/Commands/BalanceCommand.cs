using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim balance FILE</c>: imbalance over all poses, how much it matters, and where weights and payload should go.</summary>
internal static class BalanceCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        Option<string[]> set = SharedOptions.Set();
        Option<string> folder = SharedOptions.Out("the picture (PNG, SVG) and the outcome (JSON)");
        Option<string> format = SharedOptions.Format();
        var command = new Command("balance", "Imbalance about both axes: how much, whether it matters, and where to put counterweight and payload") { file, set, folder, format };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(file), parsed.GetValue(set) ?? [], parsed.GetValue(folder), parsed.GetValue(format)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string file, string[] settings, string? outFolder, string? format)
    {
        var options = new OptionValues();
        bool json = options.Json(format);
        if (ScenarioInput.Read(host, file, settings, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        if (scenario.Payload is not { } payload)
        {
            ScenarioInput.Print(host,
            [
                new Problem(file, 0, 0, "load", "a lumped load, which has no parts to shift", "[[payload]] bodies, with a [counterweight] if there is one", "a [[payload]] section for each body instead of [polar.load] and [declination.load]; axissim new FILE shows the form"),
            ]);
            return ExitCodes.BadInput;
        }

        OutputFolder? folder = OutputFolder.Open(outFolder, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        BalanceAnswer answer = BalanceWork.Of(scenario, payload, host.Stop);
        var document = new BalanceDocument(answer, file, settings);
        if (folder is not null)
        {
            BalanceFiles.Write(folder, answer, document);
        }

        return Answer.Give(host, folder, json, document.Text, page => BalancePresenter.Write(page, answer, host.Written));
    }
}
