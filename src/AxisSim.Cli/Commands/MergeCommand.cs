using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text.Maps;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim merge DIR... --out DIR</c>: joins the parts of a map into what one run would have written.</summary>
internal static class MergeCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string[]> parts = new("DIR") { Description = "The folders of all parts of one map (axissim map --shard)", Arity = ArgumentArity.OneOrMore };
        Option<string> folder = SharedOptions.Out("the whole map: cells (CSV), summary (JSON) and figure (PNG, SVG)", needed: true);
        Option<string> format = SharedOptions.Format();
        var command = new Command("merge", "Join the parts of a map that were computed with --shard") { parts, folder, format };
        command.SetAction(parsed => Run(host, parsed.GetRequiredValue(parts), parsed.GetValue(folder), parsed.GetValue(format)));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, string[] parts, string? path, string? format)
    {
        var options = new OptionValues();
        bool json = options.Json(format);
        if (path is null)
        {
            new MapOptionValues(options.Problems).Missing("--out", "a folder for the whole map", "--out map");
        }

        PartsOfMap? whole = PartsOfMap.Read(parts, options.Problems, host.Stop);
        OutputFolder? folder = OutputFolder.Open(path, host, options.Problems);
        ScenarioInput.Print(host, options.Problems);
        if (whole is null || folder is null || options.Problems.Count > 0)
        {
            return ExitCodes.BadInput;
        }

        MapReport report = MapTrial.Of(new MapReport(whole.Header, whole.Cells, whole.Invalid), () => Again(whole.Header, host.Stop), host.Stop);
        MapFiles.Write(folder, report);
        return MapCommand.Show(host, folder, report, json);
    }

    // The very file and settings that the map is of, or none. A pipe, which has no length, is not there a second time.
    private static Scenario? Again(MapHeader header, CancellationToken stop)
    {
        var file = new FileInfo(header.File);
        return file is { Exists: true, Length: > 0 } && header.SettingsFiles.All(name => new FileInfo(name) is { Exists: true, Length: > 0 })
            && LaidOver.Load(header.SettingsFiles, header.Settings, [], stop) is { } laid
            && ScenarioReader.ReadFile(header.File, laid, stop).Scenario is { } scenario && scenario.Sha256 == header.Sha256 ? scenario : null;
    }
}
