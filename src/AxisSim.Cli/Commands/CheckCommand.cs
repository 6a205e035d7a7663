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
        Option<string[]> set = SharedOptions.Set();
        Option<string> format = SharedOptions.Format();
        var command = new Command("check", "Find every problem of a scenario at once, without running it") { file, set, format };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(file), parsed.GetValue(set) ?? [], parsed.GetValue(format)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string file, string[] settings, string? format)
    {
        var options = new OptionValues();
        bool json = options.Json(format);
        ScenarioResult result = ScenarioReader.ReadFile(file, settings, host.Stop);
        Problem[] problems = [.. options.Problems, .. result.Problems];
        bool good = result.Scenario is not null && options.Problems.Count == 0;
        if (json)
        {
            Json(host, file, settings, result.Scenario, problems, good);
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

    private static void Json(Host host, string file, string[] settings, Scenario? scenario, Problem[] problems, bool good) =>
        host.Out.Write(OutcomeJson.ToText(
            "check",
            ("program", ProgramVersion.Record),
            ("scenario", scenario is null ? null : new ScenarioEntry(scenario.Name, file, scenario.Sha256, settings, scenario.Notes)),
            ("good", good),
            ("problems", problems),
            ("axes", scenario is null ? null : AxisNames.Of(scenario.Setup).Select(axis => new { Axis = axis, Facts = Facts.Of(scenario.Setup, axis) }).ToArray())));
}
