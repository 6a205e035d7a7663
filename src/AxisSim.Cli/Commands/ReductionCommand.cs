using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Reductions;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim reduction FILE</c>: a lesson on the total reduction.</summary>
internal static class ReductionCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Axis, string? From, string? To, string? Points, string? Ratios, string? Margin, string? Threads, string? Folder, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format(), folder = SharedOptions.Out("the table (CSV), the document (JSON) and the figure (PNG, SVG)");
        Option<string> from = new("--from") { Description = "Least total reduction (the default: an eighth of that in the file)", HelpName = "N" };
        Option<string> to = new("--to") { Description = "Greatest total reduction (the default: four times that in the file)", HelpName = "N" };
        Option<string> points = new("--points") { Description = "How many reductions, evenly spaced in the logarithm (the default: 11)", HelpName = "N" };
        Option<string> ratios = new("--ratios") { Description = "The reductions themselves, in place of --from, --to and --points: --ratios \"100,216,360,720\"", HelpName = "LIST" };
        Option<string> margin = new("--margin") { Description = "Share of the motor's torque to keep in hand, as \"30 %\" (the default)", HelpName = "SHARE" };
        Option<string> threads = SharedOptions.Threads();
        var command = new Command("reduction", "A lesson: how the total reduction changes speed, acceleration, torque and resolution, and what binds") { file, axis, lay.Files, lay.Set, from, to, points, ratios, margin, threads, folder, format };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(axis), parsed.GetValue(from), parsed.GetValue(to), parsed.GetValue(points), parsed.GetValue(ratios), parsed.GetValue(margin), parsed.GetValue(threads), parsed.GetValue(folder), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        var own = new ReductionOptionValues(options.Problems);
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        double? from = own.Ratio("--from", request.From), to = own.Ratio("--to", request.To);
        int points = own.Points(request.Points), threads = options.Threads(request.Threads);
        IReadOnlyList<double>? list = own.Ratios(request.Ratios);
        own.Apart(request.Ratios, request.From, request.To, request.Points);
        double margin = own.Margin(request.Margin, ReductionOptions.DefaultMarginShare);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        IReadOnlyList<MountAxis> axes = TurningAxes.Of(options, asked, scenario.Setup);
        foreach (MountAxis axis in axes)
        {
            (double first, double last) = ReductionList.Ends(scenario.Setup.Axis(axis).Train.TotalRatio, from, to);
            if (list is null && first >= last)
            {
                own.Range(first, last);
            }
        }

        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        var work = new LessonWork(request.File, scenario.Laid, margin, threads);
        IReadOnlyList<ReductionReport> reports = ReductionTrial.Of(
            scenario, work.Run(host, scenario.Setup, axes, axis => Ratios(scenario.Setup, axis, list, from, to, points)), new QuestionOptions { Threads = threads, Stop = host.Stop });
        var document = new ReductionDocument(reports, request.File, scenario);
        if (folder is not null)
        {
            ReductionFiles.Write(folder, scenario.Name, reports, document);
        }

        return Answer.Give(host, folder, json, document.Text, page => ReductionPresenter.Write(page, reports, host.Written));
    }

    private static IReadOnlyList<double> Ratios(MountSetup setup, MountAxis axis, IReadOnlyList<double>? list, double? from, double? to, int points)
    {
        double own = setup.Axis(axis).Train.TotalRatio;
        return list is null ? ReductionList.Of(own, from, to, points) : ReductionList.WithOwn(list, own);
    }
}
