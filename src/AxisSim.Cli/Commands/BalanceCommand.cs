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
    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        Option<string[]> set = SharedOptions.Set();
        Option<string> format = SharedOptions.Format();
        var command = new Command("balance", "Imbalance about both axes over all poses, and where to put counterweight and payload") { file, set, format };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(file), parsed.GetValue(set) ?? [], parsed.GetValue(format)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string file, string[] settings, string? format)
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

        BalanceReport report = BalanceStudy.Run(payload, scenario.LatitudeRadians);
        BalanceTried tried = BalanceTrial.Of(scenario, payload, report, new QuestionOptions { Stop = host.Stop });
        if (json)
        {
            host.Out.Write(OutcomeJson.ToText(
                "balance",
                ("program", ProgramVersion.Record),
                ("scenario", new ScenarioEntry(scenario.Name, file, scenario.Sha256, settings, scenario.Notes)),
                ("balance", report),
                ("tried_as_typed", tried)));
        }
        else
        {
            BalancePresenter.Write(new Page(host.Out, host.Colour, host.Columns), payload, scenario.LatitudeRadians, report, tried);
        }

        return ExitCodes.Good;
    }
}
