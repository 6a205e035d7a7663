namespace AxisSim.Core.Maps;

/// <summary>Computes the cells of a map that are not known yet, in batches, so that memory does not grow with the map.</summary>
public static class MapStudy
{
    private const int BatchCells = 2048;

    // Margins take far longer than runs: small batches, so that a stop loses little.
    private const int MarginBatchCells = 128;

    /// <summary>Whether a metric needs every cell: where it differs from cell to cell, nothing can be filled in.</summary>
    public static bool NeedsAll(MapMetric metric) => metric != MapMetric.Outcome;

    /// <summary>Computes what is missing. Cells that are known already (of an earlier run) are kept.</summary>
    /// <exception cref="ArgumentException">A setup of a cell will not do (<see cref="Mount.Checks.SetupChecks"/>); cells whose values do not go together are null instead.</exception>
    public static void Run(MapCells cells, MapOptions options)
    {
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(options);
        using var batch = new MapBatch(cells, options);
        int[] own = options.HasOwnPoint && !cells.IsComputed(cells.OwnPlace) ? [cells.OwnPlace] : [];
        if (options.Full || NeedsAll(cells.Metric))
        {
            RunAll(batch, [.. own, .. Owned(cells, options)], cells, options, 0);
            return;
        }

        var grid = new AdaptiveGrid(cells);
        int round = 0;
        for (IReadOnlyList<int> wanted = [.. grid.Next(), .. own]; wanted.Count > 0; wanted = grid.Next())
        {
            RunAll(batch, wanted, cells, options, round++);
        }

        grid.Fill();
    }

    /// <summary>Whether all cells of a shard (or of the whole full grid) are computed.</summary>
    public static bool IsWhole(MapCells cells, int shardIndex, int shardCount)
    {
        ArgumentNullException.ThrowIfNull(cells);
        for (int column = shardIndex; column < cells.Columns; column += shardCount)
        {
            for (int row = 0; row < cells.Rows; row++)
            {
                if (!cells.IsComputed(cells.Place(column, row)))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static IEnumerable<int> Owned(MapCells cells, MapOptions options)
    {
        for (int column = options.ShardIndex; column < cells.Columns; column += options.ShardCount)
        {
            for (int row = 0; row < cells.Rows; row++)
            {
                int place = cells.Place(column, row);
                if (!cells.IsComputed(place))
                {
                    yield return place;
                }
            }
        }
    }

    private static void RunAll(MapBatch batch, IReadOnlyList<int> places, MapCells cells, MapOptions options, int round)
    {
        int size = cells.Metric == MapMetric.Margin ? MarginBatchCells : BatchCells;
        for (int start = 0; start < places.Count; start += size)
        {
            int[] part = new int[Math.Min(size, places.Count - start)];
            for (int i = 0; i < part.Length; i++)
            {
                part[i] = places[start + i];
            }

            int before = start;
            batch.Run(part, done => options.Progress?.Invoke(round, before + done, places.Count));
        }
    }
}
