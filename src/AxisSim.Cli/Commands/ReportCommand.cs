using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text.Moves;
using AxisSim.Cli.Text;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Report.Sheets;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim report FILE</c>: a report to read and a settings sheet to take to the mount.</summary>
internal static class ReportCommand
{
    private const string DefaultFolder = "out";

    private sealed record Request(string File, LaidArguments Laid, string? Date, string Folder);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> folder = new("--out") { Description = $"Folder for report.html and sheet.pdf (the default: {DefaultFolder}); made if missing, files of the same names are replaced", HelpName = "DIR" };
        Option<string> date = new("--date") { Description = "The date to print, as 2026-03-20 (the default: today); with the same date the files are the same, byte for byte", HelpName = "DATE" };
        var command = new Command("report", "Write a report (HTML) and a settings sheet for the mount (PDF): what to enter, what to check, and what to expect at the first power-on") { file, lay.Files, lay.Set, folder, date };
        command.SetAction(parsed => Run(host, new Request(parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(date), parsed.GetValue(folder) ?? DefaultFolder)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        DateOnly date = options.Date(request.Date);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        OutputFolder folder = OutputFolder.Open(request.Folder, host, options.Problems)!;
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        (AxisResult Result, IReadOnlyList<SlewStage> Slews)[] axes = Simulate(host, scenario);
        MoveReport report = MoveWork.Report(scenario, request.File, StepChoice.DefaultSeconds, [.. axes.Select(axis => axis.Result)]);
        int code = MoveWork.Code(report);
        if (report.Results.All(result => result.Broken is null))
        {
            ReportFiles.Write(folder, scenario, report, [.. axes.Select(axis => axis.Slews)], Typed(host, scenario, report), date);
        }

        ReportPresenter.Write(new Page(host.Out, host.Colour, host.Columns), report, host.Written);
        if (folder.Problem is { } problem)
        {
            host.Error.WriteLine(problem.ToString());
            return ExitCodes.BadInput;
        }

        return code;
    }

    private static TypedInput? Typed(Host host, Scenario scenario, MoveReport report)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        return TypedWork.Of(scenario, report.Results, host.Stop, (axis, doing, share) => progress.Report(axis.Key(), doing, share));
    }

    private static (AxisResult Result, IReadOnlyList<SlewStage> Slews)[] Simulate(Host host, Scenario scenario)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<(AxisResult, IReadOnlyList<SlewStage>)>[] runs = [.. AxisNames.Of(scenario.Setup).Select(axis => Task.Run(
            () =>
            {
                void Report(string doing, double share)
                {
                    host.Stop.ThrowIfCancellationRequested();
                    progress.Report(axis.Key(), doing, share);
                }

                AxisResult result = MoveStudy.Run(scenario.Setup, axis, new MoveOptions { Progress = Report });
                IReadOnlyList<SlewStage> slews = result.Broken is null ? PowerOnStudy.Slews(scenario.Setup, result, StepChoice.DefaultSeconds, Report) : [];
                return (result, slews);
            },
            host.Stop))];
        Task.WaitAll(runs, host.Stop);
        return [.. runs.Select(run => run.Result)];
    }
}
