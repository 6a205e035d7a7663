using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Curves;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Plots;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim curve FILE</c>: pull-out torque against speed, with the torque that the move needs.</summary>
internal static class CurveCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Axis, string? Folder, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format(), folder = SharedOptions.Out("the curves (CSV) and the figure (PNG, SVG)");
        var command = new Command("curve", "Pull-out torque against speed: what the motor can give, and what the move needs of it") { file, axis, lay.Files, lay.Set, folder, format };
        command.SetAction(parsed => Run(host, new Request(parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(axis), parsed.GetValue(folder), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
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

        List<CurveReport> reports = Compute(host, scenario, axes);
        if (folder is not null)
        {
            reports.ForEach(report => Files(folder, scenario, report));
        }

        return Answer.Give(host, folder, json, () => OutcomeJson.ToText(
                "curve",
                ("program", ProgramVersion.Record),
                ("scenario", ScenarioEntry.Of(scenario, request.File)),
                ("axes", reports.Select(report => new { report.Axis, report.TotalReduction, report.Curves, report.MicrostepSwings, report.FullStepSwings }).ToArray())), page => CurvePresenter.Write(page, reports, host.Written));
    }

    private static List<CurveReport> Compute(Host host, Scenario scenario, IReadOnlyList<MountAxis> axes)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<List<CurveReport>> work = Task.Run(
            () =>
            {
                var reports = new List<CurveReport>();
                foreach (MountAxis axis in axes)
                {
                    TorqueSpeedCurves curves = CurveStudy.Run(scenario.Setup, axis, share =>
                    {
                        host.Stop.ThrowIfCancellationRequested();
                        progress.Report(axis.Key(), "pulling the motor out of step at each speed", share);
                    });
                    reports.Add(Report(scenario.Setup, axis, curves));
                }

                return reports;
            },
            host.Stop);
        work.Wait(host.Stop);
        return work.Result;
    }

    private static CurveReport Report(MountSetup setup, MountAxis axis, TorqueSpeedCurves curves)
    {
        AxisModel model = setup.Axis(axis);
        double top = curves.SpeedsRadiansPerSecond[^1];
        return new CurveReport(axis, model.Train.TotalRatio, curves)
        {
            MicrostepSwings = SwingStudy.BandsMet(setup, axis, fullStepping: false, top),
            FullStepSwings = SwingStudy.BandsMet(setup, axis, fullStepping: true, top),
            FullStepRadians = model.Motor.FullStepRadians,
            TrainStiffnessShare = SwingStudy.TrainStiffnessShare(setup, axis),
        };
    }

    private static void Files(OutputFolder folder, Scenario scenario, CurveReport report)
    {
        string axis = report.Axis.Key();
        folder.Write($"{axis}-pull-out.csv", stream => CurvesCsv.WriteCurves(stream, report.Curves));
        folder.Write($"{axis}-needed.csv", stream => CurvesCsv.WritePath(stream, report.Curves));
        MoveFiles.Figure(folder, $"{axis}-pull-out", TorqueSpeedFigure.Create(report.Curves, $"{scenario.Name}: pull-out torque, {report.Axis.Words()}", report.TotalReduction, CurvePresenter.Verdict(report)));
    }
}
