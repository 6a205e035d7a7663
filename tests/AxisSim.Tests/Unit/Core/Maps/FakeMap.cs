using AxisSim.Core.Batches;
using AxisSim.Core.Maps;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Maps;

/// <summary>Maps whose ends are a formula, so that thousands of cells take moments.</summary>
internal static class FakeMap
{
    // A power of two, so that the place comes out as it went in.
    private const double Tick = 1.0 / 1024.0;

    private static readonly MountSetup Mount = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal.toml"), []).Scenario!.Setup;

    /// <summary>Options for a map that ends as the formula says; the place travels in the observed time.</summary>
    public static MapOptions Options(MapCells cells, Func<int, int, MapEnd> formula) => new()
    {
        Axes = [MountAxis.Polar],
        Threads = 2,
        Setup = place => place < cells.Count && formula(place / cells.Rows, place % cells.Rows) == MapEnd.NotValid ? null : Mount with { Move = Mount.Move with { ObserveSeconds = (place + 1) * Tick } },
        Engine = (cases, options) =>
        {
            var results = new BatchResult[cases.Count];
            for (int i = 0; i < cases.Count; i++)
            {
                options.Stop.ThrowIfCancellationRequested();
                int place = (int)(cases[i].Setup.Move.ObserveSeconds / Tick) - 1;
                MapEnd end = formula(place / cells.Rows, place % cells.Rows);
                results[i] = new BatchResult(End(end), end == MapEnd.Arrives ? double.NaN : 0.001 * place, 10.0 + place, double.NaN, double.NaN);
                options.Finished?.Invoke(i, results[i]);
            }

            return results;
        },
    };

    public static MapCells Full(int columns, int rows, Func<int, int, MapEnd> formula)
    {
        var cells = new MapCells(columns, rows, MapMetric.Outcome);
        MapStudy.Run(cells, Options(cells, formula) with { Full = true });
        return cells;
    }

    public static MapCells Adaptive(int columns, int rows, Func<int, int, MapEnd> formula)
    {
        var cells = new MapCells(columns, rows, MapMetric.Outcome);
        MapStudy.Run(cells, Options(cells, formula));
        return cells;
    }

    public static MapEnd[] Ends(MapCells cells) => [.. Enumerable.Range(0, cells.Count).Select(cells.End)];

    private static BatchEnd End(MapEnd end) => end switch
    {
        MapEnd.Arrives => BatchEnd.Arrives,
        MapEnd.Stalls => BatchEnd.Stalls,
        MapEnd.ClutchSlips => BatchEnd.ClutchSlips,
        MapEnd.DoesNotSettle => BatchEnd.DoesNotSettle,
        MapEnd.Broken => BatchEnd.Broken,
        _ => BatchEnd.NotWorkable,
    };
}
