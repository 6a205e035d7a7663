using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Maps;
using AxisSim.Core.Maps;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Computes a map, with its journal where it has a folder, until it is done or stopped.</summary>
internal sealed class MapWork(Host host, MapPreparation map, MapHeader header, JournalContent? earlier, IReadOnlyList<MountAxis> axes, int threads)
{
    private readonly MapCells cells = earlier?.Cells ?? header.NewCells();
    private readonly FirstMessage invalid = earlier?.Invalid ?? new FirstMessage();
    private readonly Lock gate = new();

    /// <summary>The map, once it is done.</summary>
    public MapReport Report => MapTrial.Of(new(header, cells, invalid), () => map.Own, host.Stop);

    /// <summary>Null when all is done; otherwise the exit code, after a message.</summary>
    public int? Run(string? folder)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(host.Stop);
        using MapJournal? journal = Journal(folder, stop, out Problem? problem);
        if (problem is not null)
        {
            host.Error.WriteLine(problem.ToString());
            return ExitCodes.BadInput;
        }

        Greet();
        bool stopped = false;
        try
        {
            Compute(journal, stop.Token);
        }
        catch (Exception error) when (stop.IsCancellationRequested && error is (OperationCanceledException or AggregateException))
        {
            stopped = true;
        }

        journal?.Flush();
        return journal?.Problem is { } failure ? Failed(failure) : stopped ? Stopped(journal is not null) : null;
    }

    private MapJournal? Journal(string? folder, CancellationTokenSource stop, out Problem? problem)
    {
        problem = null;
        if (folder is null)
        {
            return null;
        }

        string path = Path.Combine(folder, MapJournal.FileName);
        return earlier is null ? MapJournal.Create(path, header, stop.Cancel, out problem) : MapJournal.Open(path, earlier.GoodBytes, stop.Cancel, out problem);
    }

    private void Greet()
    {
        if (earlier is null)
        {
            return;
        }

        string torn = earlier.TornBytes > 0 ? $" The last {Say.Many(earlier.TornBytes, "byte")} of the journal, of a record that was being written, {(earlier.TornBytes == 1 ? "is" : "are")} dropped." : "";
        host.Error.WriteLine($"axissim: going on with {Say.Many(cells.ComputedCount(), "cell")} of the journal.{torn}");
    }

    private void Compute(MapJournal? journal, CancellationToken stop)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        var options = new MapOptions
        {
            Axes = axes,
            HasOwnPoint = header.HasOwnPoint,
            Full = header.Full,
            ShardIndex = header.ShardIndex - 1,
            ShardCount = header.ShardCount,
            StepSeconds = header.StepSeconds,
            Threads = threads,
            Stop = stop,
            Setup = place => Setup(place, journal),
            Finished = (place, result) => journal?.Add(place, result),
            Progress = (round, done, all) => progress.Report("map", Doing(round, all), (double)done / all),
        };
        Task work = Task.Run(() => MapStudy.Run(cells, options), stop);
        work.Wait(CancellationToken.None);
    }

    private string Doing(int round, int count) => header.Full ? $"running {Say.Many(count, "cell")}"
        : round == 0 ? $"running {Say.Many(count, "cell")} of the coarse grid"
        : $"running {Say.Many(count, "cell")} along the edge, round {Say.Count(round)}";

    private MountSetup? Setup(int place, MapJournal? journal)
    {
        MountSetup? setup = map.Setup(cells, place, out Problem? problem);
        if (problem is not null)
        {
            lock (gate)
            {
                string text = $"{problem.Key}: found {problem.Found}; allowed: {problem.Allowed}";
                if (invalid.Take(place, text))
                {
                    journal?.Add(place, text);
                }
            }
        }

        return setup;
    }

    private int Failed(Problem failure)
    {
        host.Error.WriteLine(failure.ToString());
        return ExitCodes.BadInput;
    }

    private int Stopped(bool kept)
    {
        host.Error.WriteLine(kept
            ? $"axissim: stopped with {Say.Many(cells.ComputedCount(), "cell")} done, which are kept. The same command with --resume goes on from there."
            : "axissim: stopped. Nothing is kept without --out; with it, a stopped map can be taken up again.");
        return host.StoppedCode();
    }
}
