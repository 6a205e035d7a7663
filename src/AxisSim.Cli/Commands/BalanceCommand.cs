using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim balance FILE</c>: imbalance over all poses, how much it matters, and where weights and payload should go.</summary>
internal static class BalanceCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Folder, string? Scenario, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> format = SharedOptions.Format(), folder = SharedOptions.Out("the picture (PNG, SVG), the places of a balanced payload as settings (TOML) and the outcome (JSON)"), whole = NewScenario.Option("the payload balanced and its places");
        var command = new Command("balance", "Imbalance about both axes: how much, whether it matters, and where to put counterweight and payload") { file, lay.Files, lay.Set, folder, whole, format };
        command.SetAction(parsed => Run(host, new Request(parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(folder), parsed.GetValue(whole), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        bool json = options.Json(request.Format);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        NewScenario? whole = NewScenario.Open(request.Scenario, host, options.Problems);
        if (scenario.Payload is null)
        {
            options.Problems.Add(new Problem(request.File, 0, 0, "load", "a lumped load, which has no parts to shift", "[[payload]] bodies, with a [counterweight] if there is one", "a [[payload]] section for each body instead of [polar.load] and [declination.load]; axissim new FILE shows the form"));
        }

        ScenarioInput.Print(host, options.Problems);
        if (scenario.Payload is not { } payload || options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        BalanceAnswer answer = BalanceWork.Of(scenario, payload, host.Stop);
        Carry? carry = BalanceCarry.Of(scenario, request.File, answer.Tried);
        var document = new BalanceDocument(answer, request.File);
        if (folder is not null)
        {
            BalanceFiles.Write(folder, answer, carry, document);
        }

        carry?.WriteScenario(whole);
        return Answer.Give(host, folder, whole, json, document.Text, page => BalancePresenter.Write(page, request.File, answer, host.Written));
    }
}
