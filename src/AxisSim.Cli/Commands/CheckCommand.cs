using AxisSim.Cli.Output;
using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Outcomes;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim check FILE</c>: every problem of a scenario at once, or what follows from its figures.</summary>
internal static class CheckCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> format = SharedOptions.Format(), whole = NewScenario.Option("what --settings and --set lay over FILE");
        var command = new Command("check", "Find every problem of a scenario at once, without running it") { file, lay.Files, lay.Set, whole, format };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(whole), parsed.GetValue(format)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string file, LaidArguments laid, string? whole, string? format)
    {
        var options = new OptionValues();
        bool json = options.Json(format);
        NewScenario? made = NewScenario.Open(whole, host, options.Problems);
        ScenarioResult result = ScenarioInput.Read(file, laid, host.Stop);
        if (made is not null && result.Scenario is { } read && options.Problems.Count == 0)
        {
            made.Write(read, SettingsText.Notes(read, []));
            options.Problems.AddRange(made.Problem is { } unwritten ? [unwritten] : []);
        }

        Problem[] problems = [.. options.Problems, .. result.Problems];
        bool good = result.Scenario is not null && options.Problems.Count == 0;
        if (json)
        {
            Json(host, file, result.Scenario, problems, good);
        }
        else
        {
            Text(host, file, result.Scenario, problems, good);
        }

        return good ? ExitCodes.Good : ExitCodes.BadInput;
    }

    private static void Text(Host host, string file, Scenario? scenario, Problem[] problems, bool good)
    {
        Problem[] errors = [.. problems.Where(problem => problem.Severity == ProblemSeverity.Error)];
        var page = new Page(host.Out, host.Colour, host.Columns);
        page.Verdict(good ? $"No problems in {file}." : $"{Say.Many(errors.Length, "problem")} in {file}.", good);
        foreach (Problem problem in problems)
        {
            page.Copyable(problem.ToString(), indent: 0);
        }

        if (!good || scenario is null)
        {
            return;
        }

        if (host.Written.Count > 0)
        {
            page.Text($"{host.Written[0]} is written: the file with what was laid over it.");
        }

        FactsText.Write(page, [.. AxisNames.Of(scenario.Setup).Select(axis => (axis, Facts.Of(scenario.Setup, axis)))]);
        if (scenario.Notes.Count > 0)
        {
            page.Heading("Notes");
            foreach (string note in scenario.Notes)
            {
                page.Item("-", note);
            }
        }
    }

    private static void Json(Host host, string file, Scenario? scenario, Problem[] problems, bool good) =>
        host.Out.Write(OutcomeJson.ToText(
            "check",
            ("program", ProgramVersion.Record),
            ("scenario", scenario is null ? null : ScenarioEntry.Of(scenario, file)),
            ("good", good),
            ("problems", problems),
            ("axes", scenario is null ? null : AxisNames.Of(scenario.Setup).Select(axis => new { Axis = axis, Facts = Facts.Of(scenario.Setup, axis) }).ToArray())));
}
