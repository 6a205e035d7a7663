using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim envelope FILE</c>: the greatest safe slew rate against the ramp.</summary>
internal static class EnvelopeCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Axis, string? Ramp, string? Points, string? For, string? Margin, string? Threads, string? Folder, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format(), folder = SharedOptions.Out("the table (CSV), the document (JSON) and the figure (PNG, SVG)");
        Option<string> ramp = new("--ramp") { Description = "Ramp times, as \"FROM..TO s\" (the default: from a quarter to four times that of the file)", HelpName = "RANGE" };
        Option<string> points = new("--points") { Description = "How many ramp times, evenly spaced in the logarithm (the default: 8)", HelpName = "N" };
        Option<string> list = new("--for") { Description = "One curve for each value of a key, as \"KEY=v1,v2,v3 UNIT\": --for \"polar.drive.slew_current=0.7,0.9,1.1 A\"", HelpName = "LIST" };
        Option<string> margin = new("--margin") { Description = "Load in hand: the rates arrive with inertia, imbalance and friction that much greater (the default: none)", HelpName = "SHARE" };
        Option<string> threads = SharedOptions.Threads();
        var command = new Command("envelope", "The greatest slew rate that arrives, for a range of ramps and a list of loads or currents") { file, axis, lay.Files, lay.Set, ramp, points, list, margin, threads, folder, format };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(axis), parsed.GetValue(ramp), parsed.GetValue(points), parsed.GetValue(list), parsed.GetValue(margin), parsed.GetValue(threads), parsed.GetValue(folder), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        var own = new EnvelopeOptionValues(options.Problems);
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        (double From, double To)? ramp = own.Ramp(request.Ramp);
        int points = own.Points(request.Points), threads = options.Threads(request.Threads);
        double margin = own.Margin(request.Margin);
        IReadOnlyList<ForValue> values = ForValues.Read(request.For, options.Problems);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        IReadOnlyList<MountAxis> axes = TurningAxes.Of(options, asked, scenario.Setup);
        IReadOnlyList<MountSetup> variants = VariantInput.Read(host, scenario, request.For, values, options.Problems);
        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        var work = new EnvelopeWork(scenario.Setup, values, variants) { File = request.File, Laid = scenario.Laid, Ramp = ramp, Points = points, LoadFactor = 1.0 + margin, Threads = threads };
        IReadOnlyList<EnvelopeReport> reports = work.Run(host, axes);
        IReadOnlyList<TypedLine> tries = EnvelopeTrial.Of(scenario, reports, new QuestionOptions { Threads = threads, Stop = host.Stop });
        var document = new EnvelopeDocument(reports, tries, request.File, scenario);
        if (folder is not null)
        {
            EnvelopeFiles.Write(folder, scenario.Name, reports, document);
        }

        return Answer.Give(host, folder, json, document.Text, page => EnvelopePresenter.Write(page, reports, tries, host.Written));
    }
}
