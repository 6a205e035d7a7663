using AxisSim.Core.Batches;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Maps;

/// <summary>Runs some cells of a map: their setups, their cases on every axis, and what the axes make together.</summary>
internal sealed class MapBatch(MapCells cells, MapOptions options) : IDisposable
{
    private readonly PullOutStore store = new();
    private readonly Lock gate = new();
    private readonly ParallelOptions parallel = new()
    {
        MaxDegreeOfParallelism = options.Threads > 0 ? options.Threads : Environment.ProcessorCount,
        CancellationToken = options.Stop,
    };

    private bool closed;

    /// <summary>After this nothing is reported any more, should a run still be ending elsewhere.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            closed = true;
        }
    }

    /// <summary>Computes the places and reports each as it is done, with the number done so far.</summary>
    public void Run(int[] places, Action<int> progress)
    {
        int done = 0;
        void Report(int place, in CellResult result)
        {
            lock (gate)
            {
                if (!closed)
                {
                    cells.Set(place, result);
                    options.Finished?.Invoke(place, result);
                    progress(++done);
                }
            }
        }

        var setups = new MountSetup?[places.Length];
        Parallel.For(0, places.Length, parallel, i => setups[i] = options.Setup(places[i]));
        EntryCheck.RequireAll(setups, one => one is null ? [] : SetupChecks.Problems(one, options.Axes), options.StepSeconds, nameof(options), places);
        int[] valid = [.. Enumerable.Range(0, places.Length).Where(i => setups[i] is not null)];
        foreach (int i in Enumerable.Range(0, places.Length).Where(i => setups[i] is null))
        {
            Report(places[i], CellResult.Bare(MoveEnd.NotValid));
        }

        double[] margins = cells.Metric == MapMetric.Margin ? Margins(valid, setups) : [];
        // Neighbours of one column stay next to each other; the axes follow one another.
        BatchCase[] cases = [.. options.Axes.SelectMany(axis => valid.Select(i => new BatchCase(setups[i]!, axis)))];
        var results = new CellResult[cases.Length];
        int[] left = new int[valid.Length];
        Array.Fill(left, options.Axes.Count);
        options.Engine(cases, new BatchOptions
        {
            Depth = MapStudy.NeedsAll(cells.Metric) && cells.Metric != MapMetric.Margin ? BatchDepth.Settling : BatchDepth.Outcome,
            StepSeconds = options.StepSeconds,
            Threads = options.Threads,
            Stop = options.Stop,
            Finished = (index, result) =>
            {
                int cell = index % valid.Length;
                results[index] = CellResult.Of(result, margins.Length > 0 ? margins[index] : double.NaN);
                if (Interlocked.Decrement(ref left[cell]) == 0)
                {
                    CellResult all = results[cell];
                    for (int axis = 1; axis < options.Axes.Count; axis++)
                    {
                        all = all.With(results[(axis * valid.Length) + cell]);
                    }

                    Report(places[valid[cell]], all);
                }
            },
        });
    }

    private double[] Margins(int[] valid, MountSetup?[] setups)
    {
        double[] margins = new double[options.Axes.Count * valid.Length];
        Parallel.For(0, margins.Length, parallel, index =>
        {
            MountAxis axis = options.Axes[index / valid.Length];
            margins[index] = CurveStudy.MarginOf(setups[valid[index % valid.Length]]!, axis, store).Value;
        });
        return margins;
    }
}
