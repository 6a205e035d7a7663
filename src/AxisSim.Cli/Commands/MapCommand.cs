using System.CommandLine;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Input;
using AxisSim.Cli.Json;
using AxisSim.Cli.Output;
using AxisSim.Cli.Text.Maps;
using AxisSim.Cli.Text;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Commands;

/// <summary><c>axissim map FILE --x ... --y ...</c>: where in the plane of two keys the move arrives, and how far the file's own values are from the edge.</summary>
internal static class MapCommand
{
    private sealed record Request(string File, LaidArguments Laid, string? X, string? Y, string? Grid, string? Metric, string? Axis, string? Step, string? Threads, string? Shard, string? Folder, string? Format, bool Full, bool Resume);

    /// <summary>The command.</summary>
    public static Command Create(Host host)
    {
        Argument<string> file = SharedOptions.File();
        var lay = new LayOptions();
        Option<string> axis = SharedOptions.Axis(), format = SharedOptions.Format();
        Option<string> folder = new("--out") { Description = "Folder for the cells (CSV), the summary (JSON), the figure (PNG, SVG) and the journal that --resume goes on from; made if missing", HelpName = "DIR" };
        Option<string> x = new("--x") { Description = "Needed: the first key and its range, the unit once at the end: \"polar.motion.ramp_time=0.3..3 s\"; \"KEY=log FROM..TO UNIT\" for logarithmic spacing", HelpName = "RANGE" };
        Option<string> y = new("--y") { Description = "Needed: the second key and its range", HelpName = "RANGE" };
        Option<string> grid = new("--grid") { Description = $"Columns and rows, {MapOptionValues.DefaultGrid} by default", HelpName = "NX,NY" };
        Option<string> metric = new("--metric") { Description = "What to map: outcome (the default), margin, settle, duration or temperature", HelpName = "METRIC" };
        Option<string> step = new("--step") { Description = "Time step, such as 50us (the default); shortened where the speed asks for it", HelpName = "TIME" };
        Option<string> threads = SharedOptions.Threads();
        Option<string> shard = new("--shard") { Description = "Needs --out: compute part I of N, into a folder of its own; axissim merge joins the parts", HelpName = "I/N" };
        Option<bool> full = new("--full") { Description = "Run every cell, instead of only those along the edges between outcomes" };
        Option<bool> resume = new("--resume") { Description = "Needs --out: go on with a map that was stopped, from the journal in its folder" };
        var command = new Command("map", "Map the outcome over the plane of two keys: where it arrives, where it stalls, and how far your values are from the edge")
        {
            file, x, y, grid, metric, full, axis, lay.Files, lay.Set, step, threads, folder, resume, shard, format,
        };
        command.SetAction(parsed => Run(host, new Request(
            parsed.GetRequiredValue(file), lay.Of(parsed), parsed.GetValue(x), parsed.GetValue(y), parsed.GetValue(grid), parsed.GetValue(metric), parsed.GetValue(axis),
            parsed.GetValue(step), parsed.GetValue(threads), parsed.GetValue(shard), parsed.GetValue(folder), parsed.GetValue(format), parsed.GetValue(full), parsed.GetValue(resume))));
        return command;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static int Run(Host host, Request request)
    {
        var options = new OptionValues();
        List<Problem> problems = options.Problems;
        var mapOptions = new MapOptionValues(problems);
        bool json = options.Json(request.Format);
        MountAxis? asked = options.Axis(request.Axis);
        double step = options.Step(request.Step);
        MapMetric metric = mapOptions.Metric(request.Metric);
        bool full = request.Full || MapStudy.NeedsAll(metric);
        (int columns, int rows) = mapOptions.Grid(request.Grid);
        int threads = options.Threads(request.Threads);
        (int index, int count) = mapOptions.Shard(request.Shard, columns, full);
        CheckGiven(request, mapOptions);
        MapPreparation? map = Prepare(request, columns, rows, problems, host.Stop);
        IReadOnlyList<MountAxis> axes = map is null ? [] : options.Axes(asked, map.AnySetup);
        OutputFolder? folder = OutputFolder.Open(request.Folder, host, problems);
        if (map is null || problems.Count > 0)
        {
            ScenarioInput.Print(host, problems);
            return ExitCodes.BadInput;
        }

        MapHeader header = new()
        {
            Program = ProgramVersion.Record.Version,
            Scenario = map.Name,
            File = request.File,
            Settings = request.Laid.Settings,
            SettingsFiles = request.Laid.Files,
            Notes = [.. map.Notes],
            Sha256 = map.Sha256,
            Axes = [.. axes.Select(axis => axis.Key())],
            X = MapKey.Of(map.First, map.OwnFirst),
            Y = MapKey.Of(map.Second, map.OwnSecond),
            Metric = metric,
            Full = full,
            StepSeconds = step,
            HasOwnPoint = map.HasOwnPoint,
            ShardIndex = index,
            ShardCount = count,
        };
        JournalContent? earlier = request.Folder is { } place ? JournalFolder.Look(place, header, request.Resume, problems, host.Stop) : null;
        if (problems.Count > 0)
        {
            ScenarioInput.Print(host, problems);
            return ExitCodes.BadInput;
        }

        foreach (Problem remark in map.Remarks)
        {
            host.Error.WriteLine(remark.ToString());
        }

        MapFiles.Begin(folder);
        var work = new MapWork(host, map, header, earlier, axes, threads);
        if (work.Run(request.Folder) is { } code)
        {
            return code;
        }

        return Tell(host, folder, work.Report, json);
    }

    private static int Tell(Host host, OutputFolder? folder, MapReport report, bool json)
    {
        if (report.Header.ShardCount > 1)
        {
            new PartPresenter(host).Write(report);
            return ExitCodes.Good;
        }

        if (folder is not null)
        {
            MapFiles.Write(folder, report);
        }

        int code = Show(host, folder, report, json);
        if (folder?.Problem is not null)
        {
            host.Error.WriteLine("axissim: all cells are kept in the journal; once the files can be written, the same command with --resume writes them at once.");
        }

        return code;
    }

    /// <summary>Prints a whole map whose files, if any, are written.</summary>
    internal static int Show(Host host, OutputFolder? folder, MapReport report, bool json)
    {
        int code = Answer.Give(host, folder, json, () => new MapDocument(report).Text(), page => MapPresenter.Write(page, report, host.Written));
        bool broken = report.Cells.CountOf(MoveEnd.Broken) > 0 || report.Own.End == MoveEnd.Broken;
        return code == ExitCodes.Good && broken ? ExitCodes.BadInput : code;
    }

    private static void CheckGiven(Request request, MapOptionValues options)
    {
        const string Range = "a key and its range, KEY=FROM..TO UNIT";
        if (request.X is null)
        {
            options.Missing("--x", Range, "--x \"polar.motion.ramp_time=0.3..3 s\"");
        }

        if (request.Y is null)
        {
            options.Missing("--y", Range, "--y \"polar.motion.slew_rate=1..5 deg/s\"");
        }

        if (request.Resume && request.Folder is null)
        {
            options.Missing("--out", "with --resume, the folder of the map to go on with", "--out results");
        }

        if (request.Shard is not null && request.Folder is null)
        {
            options.Missing("--out", "with --shard, a folder for this part", "--out part-1");
        }
    }

    // A range that is missing or a grid that was refused must not hide what else is wrong.
    private static MapPreparation? Prepare(Request request, int columns, int rows, List<Problem> problems, CancellationToken stop)
    {
        const string Any = "polar.axis.damping_ratio=0.04..0.06", Other = "polar.motor.rotor_inertia=10..20 g*cm^2";
        var found = new List<Problem>();
        LaidOver laid = LaidOver.Load(request.Laid.Files, request.Laid.Settings, found, stop) ?? LaidOver.Of(request.Laid.Settings);
        MapPreparation? map = MapPreparation.Read(request.File, laid, (request.X ?? Any, columns), (request.Y ?? Other, rows), found, stop);
        problems.AddRange(found.Where(problem => problem.File is not ("--x" or "--y") || (problem.File == "--x" ? request.X : request.Y) is not null));
        return map;
    }
}
