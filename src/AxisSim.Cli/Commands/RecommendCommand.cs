using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Recommend;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim recommend FILE</c>: what to set.</summary>
internal static class RecommendCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? Aim, string? Margin, string? Axis, bool Coarse, string? Samples, string? Seed, string? Threads, string? Folder, string? Scenario, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format(), folder = SharedOptions.Out("the settings, the trade-off (CSV, PNG, SVG) and the document (JSON)");
        Option<string> aim = new("--aim") { Description = "What is wanted most: fastest, quietest, coolest or balanced (the default)", HelpName = "AIM" };
        Option<string> margin = new("--margin") { Description = "Margin that must be left at every corner of the tolerances (the default: 30%, a load factor of 1.3)", HelpName = "SHARE" };
        Option<bool> coarse = new("--coarse") { Description = "A first answer in some seconds: fewer settings, only the worst corner verified" };
        Option<string> samples = new("--samples") { Description = "Mounts drawn at random within the tolerances (the default: 200)", HelpName = "N" };
        Option<string> seed = new("--seed") { Description = "Seed of that draw (the default: 1)", HelpName = "N" };
        Option<string> threads = SharedOptions.Threads(), whole = NewScenario.Option("the recommended settings");
        var command = new Command("recommend", "Slew rate, ramp, currents and changeover that hold with a margin at every corner of the tolerances") { file, aim, margin, axis, lay.Files, lay.Set, coarse, samples, seed, threads, folder, whole, format };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(aim), parsed.GetValue(margin), parsed.GetValue(axis), parsed.GetValue(coarse), parsed.GetValue(samples), parsed.GetValue(seed), parsed.GetValue(threads), parsed.GetValue(folder), parsed.GetValue(whole), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        var own = new RecommendOptionValues(options.Problems);
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        var recommend = new RecommendOptions
        {
            Aim = own.Aim(request.Aim),
            LoadFactor = 1.0 + own.Margin(request.Margin),
            Coarse = request.Coarse,
            Samples = own.Samples(request.Samples),
            Seed = own.Seed(request.Seed),
            Threads = options.Threads(request.Threads),
        };
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        IReadOnlyList<MountAxis> axes = options.Axes(asked, scenario.Setup);
        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        NewScenario? whole = NewScenario.Open(request.Scenario, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        RecommendReport report = new RecommendWork(scenario, request.File).Run(host, axes, recommend with { Tolerances = scenario.Tolerances, LatitudeRadians = scenario.LatitudeRadians });
        var document = new RecommendDocument(report, scenario);
        Carry? carry = RecommendCarry.Of(scenario, report);
        if (folder is not null)
        {
            RecommendFiles.Write(folder, report, document, carry);
        }

        carry?.WriteScenario(whole);
        return Answer.Give(host, folder, whole, json, document.Text, page => RecommendPresenter.Write(page, report, host.Written), report.Found ? ExitCodes.Good : ExitCodes.PredictedFailure);
    }
}
