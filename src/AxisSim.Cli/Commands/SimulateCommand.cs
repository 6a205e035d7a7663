using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim simulate FILE</c>: runs the move and says whether it arrives, and why.</summary>
internal static class SimulateCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Axis, string? Folder, string? Format, string? Step, bool Full);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format();
        Option<string> folder = SharedOptions.Out("the trace (CSV), the outcome (JSON) and the figures (PNG, SVG)");
        Option<string> step = new("--step") { Description = "Time step, such as 50us (the default); shortened where the speed asks for it", HelpName = "TIME" };
        Option<bool> full = new("--full") { Description = "Needs --out: every step in the trace, a row each, not the least and greatest of some thousands of stretches" };
        var command = new Command("simulate", "Run the move of a scenario: does it arrive and settle, how near to stalling, and why") { file, axis, lay.Files, lay.Set, folder, format, step, full };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(axis), parsed.GetValue(folder), parsed.GetValue(format), parsed.GetValue(step), parsed.GetValue(full))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        double step = options.Step(request.Step);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        IReadOnlyList<MountAxis> axes = options.Axes(asked, scenario.Setup);
        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        MoveReport report = Simulate(host, request, scenario, axes, step);
        int code = MoveWork.Code(report);
        var document = new MoveDocument(report, scenario, code);
        if (folder is not null)
        {
            if (request.Full && MoveFiles.Warning(report) is { } large)
            {
                host.Error.WriteLine(large);
            }

            MoveFiles.Write(folder, report, request.Full, document);
        }

        return Answer.Give(host, folder, json, document.Text, page => MovePresenter.Write(page, report, host.Written), code);
    }

    private static MoveReport Simulate(Host host, Request request, Scenario scenario, IReadOnlyList<MountAxis> axes, double step)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<AxisResult>[] runs = [.. axes.Select(axis => Task.Run(
            () => MoveStudy.Run(scenario.Setup, axis, new MoveOptions
            {
                StepSeconds = step,
                Stop = host.Stop,
                Progress = (doing, share) =>
                {
                    host.Stop.ThrowIfCancellationRequested();
                    progress.Report(axis.Key(), doing, share);
                },
            }),
            host.Stop))];
        Task.WaitAll(runs, host.Stop);
        return MoveWork.Report(scenario, request.File, step, [.. runs.Select(run => run.Result)], host.Stop);
    }
}
