using System.Text;
using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Balance;
using AxisSim.Core.Questions;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim balance FILE</c>: imbalance over all poses, and where weights and payload should go.</summary>
internal static class BalanceCommand
{
    private const string Outcome = "balance.json";

    private sealed record Request(string File, LaidArguments Laid, string? Folder, string? Scenario, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> format = SharedOptions.Format(), folder = SharedOptions.Out("the places of a balanced payload as settings (TOML) and the document (JSON)"), whole = NewScenario.Option("the payload balanced and its places");
        var command = new Command("balance", "Imbalance about both axes over all poses, and where to put counterweight and payload") { file, lay.Files, lay.Set, folder, whole, format };
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

        BalanceReport report = BalanceStudy.Run(payload, scenario.LatitudeRadians);
        BalanceTried tried = BalanceTrial.Of(scenario, payload, report, new QuestionOptions { Stop = host.Stop });
        Carry? carry = BalanceCarry.Of(scenario, request.File, tried);
        string Document() => OutcomeJson.ToText(
            "balance",
            ("program", ProgramVersion.Record),
            ("scenario", ScenarioEntry.Of(scenario, request.File)),
            ("balance", report),
            ("tried_as_typed", tried));
        if (folder is not null)
        {
            folder.Remove(Outcome);
            Carry.Write(folder, CarryText.Balanced, carry);
            folder.Write(Outcome, stream => stream.Write(Encoding.UTF8.GetBytes(Document())));
        }

        carry?.WriteScenario(whole);
        return Answer.Give(host, folder, whole, json, Document, page => BalancePresenter.Write(page, request.File, payload, scenario.LatitudeRadians, report, tried, host.Written));
    }
}
