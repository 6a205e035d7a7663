using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Comparisons;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim compare FILE</c>: which motor, reduction and supply for this payload.</summary>
internal static class CompareCommand
{
    private sealed record Request(
        string File, LaidArguments Laid, string? Motors, string? Ratios, string? Voltages, string? Margin, string? CurrentShare, string[] Measured, bool All, string? Axis, string? Threads, string? Folder, string? Scenario, string? Format);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format(), folder = SharedOptions.Out("the table (CSV), the document (JSON) and the figures (PNG, SVG)");
        Option<string> motors = new("--motors") { Description = "Needed: a table of motors (CSV, docs/catalogue.md); catalogues/motors.csv has invented ones by frame size", HelpName = "MOTORS.csv" };
        Option<string> ratios = new("--ratios") { Description = "Total reductions, motor to axis, as 144,216,360 (the default: that of the file); the stage before the worm is changed", HelpName = "LIST" };
        Option<string> voltages = new("--voltages") { Description = "Supply voltages, as \"12,24,36 V\" (the default: that of the file)", HelpName = "LIST" };
        Option<string> margin = new("--margin") { Description = "How much more inertia, imbalance and friction must still be moved (the default: 30%)", HelpName = "SHARE" };
        Option<string> share = new("--current-share") { Description = "Slew current over rated current (the default: 100%)", HelpName = "SHARE" };
        Option<string[]> measured = new("--measured")
        {
            Description = "Fit a motor of the table to its measured pull-out curve, as \"NAME=curve.csv\" (docs/catalogue.md). May be repeated",
            HelpName = "NAME=FILE",
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
        };
        Option<bool> all = new("--all") { Description = "Simulate every candidate, also those that the closed form rules out" };
        Option<string> threads = SharedOptions.Threads(), whole = NewScenario.Option("the best motor and its settings");
        var command = new Command("compare", "Ranks motors, total reductions and supplies for the payload of a scenario, before buying") { file, motors, ratios, voltages, margin, share, measured, all, axis, lay.Files, lay.Set, threads, folder, whole, format };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(motors), parsed.GetValue(ratios), parsed.GetValue(voltages), parsed.GetValue(margin), parsed.GetValue(share), parsed.GetValue(measured) ?? [], parsed.GetValue(all),
            parsed.GetValue(axis), parsed.GetValue(threads), parsed.GetValue(folder), parsed.GetValue(whole), parsed.GetValue(format))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        var own = new CompareOptionValues(options.Problems);
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        IReadOnlyList<double?> ratios = own.Ratios(request.Ratios), voltages = own.Voltages(request.Voltages);
        double margin = own.Margin(request.Margin), share = own.CurrentShare(request.CurrentShare);
        int threads = options.Threads(request.Threads);
        IReadOnlyList<MotorChoice> motors = own.Motors(request.Motors, host.Stop);
        if (ScenarioInput.Read(host, request.File, request.Laid, options) is not { } scenario)
        {
            return ExitCodes.BadInput;
        }

        IReadOnlyList<MountAxis> axes = TurningAxes.Of(options, asked, scenario.Setup);
        IReadOnlyList<MeasuredFit> fits = axes.Count == 0 ? [] : MeasuredInput.Read(request.Measured, motors, scenario.Setup.Axis(axes[0]).Drive.SupplyVolts, options.Problems, host.Stop);
        OutputFolder? folder = OutputFolder.Open(request.Folder, host, options.Problems);
        NewScenario? whole = NewScenario.Open(request.Scenario, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        var work = new ComparisonWork(scenario, motors, ratios, voltages)
        {
            File = request.File, Laid = scenario.Laid, Margin = margin, CurrentShare = share, Threads = threads, All = request.All, Fits = fits,
        };
        ComparisonReport report = work.Run(host, axes);
        var document = new ComparisonDocument(report, scenario, request.Motors!);
        Carry? carry = ComparisonCarry.Of(scenario, report, request.Motors!);
        if (folder is not null)
        {
            ComparisonFiles.Write(folder, scenario.Name, report, document, carry);
        }

        carry?.WriteScenario(whole);
        return Answer.Give(host, folder, whole, json, document.Text, page => ComparisonPresenter.Write(page, report, host.Written));
    }
}
