using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Maps;

/// <summary>Chooses the cells to compute where only the edges between ends matter: a coarse grid, then ever finer along the edges.</summary>
/// <remarks>
/// The map is covered by square blocks whose corners are computed. A block is uneven when the computed cells in it or on its rim do not
/// all end alike. An uneven block and the eight around it are halved (their middles are computed too), and their quarters are judged
/// in the same way, down to single cells. A cell computed for one block can make its neighbour uneven, so this goes on until nothing more
/// is asked for. What is asked for only ever grows with what is known, so the cells computed in the end are the same in
/// whatever order they come in, also after a stop and a resume. An island of another end that touches none of the computed cells is not
/// seen: its smaller side is then below the coarse stride.
/// </remarks>
public sealed class AdaptiveGrid
{
    private const int CoarseBlocks = 8;
    private const int GreatestStride = 32;

    private readonly MapCells cells;

    /// <summary>Refines a map in place.</summary>
    public AdaptiveGrid(MapCells cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        this.cells = cells;
        CoarseStride = 1;
        while (CoarseStride < GreatestStride && CoarseStride * 2 * CoarseBlocks <= Math.Min(cells.Columns, cells.Rows) - 1)
        {
            CoarseStride *= 2;
        }
    }

    /// <summary>Cells from one computed column or row of the coarse grid to the next.</summary>
    public int CoarseStride { get; }

    /// <summary>The places to compute next, in order; empty when all is known that is to be.</summary>
    public IReadOnlyList<int> Next()
    {
        var wanted = new SortedSet<int>();
        Visit((column, row, stride) =>
        {
            Want(column, row, wanted);
            Want(Math.Min(column + stride, cells.Columns - 1), row, wanted);
            Want(column, Math.Min(row + stride, cells.Rows - 1), wanted);
            Want(Math.Min(column + stride, cells.Columns - 1), Math.Min(row + stride, cells.Rows - 1), wanted);
        });
        return [.. wanted];
    }

    /// <summary>Fills in, once nothing more is to be computed, all that lies in even blocks.</summary>
    public void Fill() => Visit((column, row, stride) =>
    {
        MoveEnd end = cells.End(cells.Place(column, row));
        ForEach(column, row, stride, place =>
        {
            cells.Fill(place, end);
            return true;
        });
    });

    /// <summary>Goes through the blocks from the coarsest on; those that are halved are followed by their quarters.</summary>
    private void Visit(Action<int, int, int> eachBlock)
    {
        int across = Blocks(cells.Columns, CoarseStride), up = Blocks(cells.Rows, CoarseStride);
        var live = new HashSet<(int, int)>();
        for (int i = 0; i < across; i++)
        {
            for (int j = 0; j < up; j++)
            {
                live.Add((i, j));
            }
        }

        for (int stride = CoarseStride; live.Count > 0; stride /= 2)
        {
            HashSet<(int, int)> halved = stride == 1 ? [] : Halved(live, stride);
            var quarters = new HashSet<(int, int)>();
            foreach ((int i, int j) in live)
            {
                eachBlock(i * stride, j * stride, stride);
                if (halved.Contains((i, j)))
                {
                    AddQuarters(quarters, 2 * i, 2 * j, stride / 2);
                }
            }

            live = quarters;
        }
    }

    private HashSet<(int, int)> Halved(HashSet<(int I, int J)> live, int stride)
    {
        var halved = new HashSet<(int, int)>();
        foreach ((int i, int j) in live)
        {
            if (!IsUneven(i * stride, j * stride, stride))
            {
                continue;
            }

            for (int di = -1; di <= 1; di++)
            {
                for (int dj = -1; dj <= 1; dj++)
                {
                    if (live.Contains((i + di, j + dj)))
                    {
                        halved.Add((i + di, j + dj));
                    }
                }
            }
        }

        return halved;
    }

    private void AddQuarters(HashSet<(int, int)> quarters, int i, int j, int stride)
    {
        int across = Blocks(cells.Columns, stride), up = Blocks(cells.Rows, stride);
        for (int di = 0; di <= 1; di++)
        {
            for (int dj = 0; dj <= 1; dj++)
            {
                if (i + di < across && j + dj < up)
                {
                    quarters.Add((i + di, j + dj));
                }
            }
        }
    }

    private bool IsUneven(int column, int row, int stride)
    {
        MoveEnd first = MoveEnd.Unknown;
        return !ForEach(column, row, stride, place =>
        {
            MoveEnd end = cells.IsComputed(place) ? cells.End(place) : MoveEnd.Unknown;
            first = first == MoveEnd.Unknown ? end : first;
            return end == MoveEnd.Unknown || end == first;
        });
    }

    /// <summary>Goes through the cells of a block and of its rim while the answer is yes; whether it was to the end.</summary>
    private bool ForEach(int column, int row, int stride, Func<int, bool> goOn)
    {
        for (int i = column; i <= Math.Min(column + stride, cells.Columns - 1); i++)
        {
            for (int j = row; j <= Math.Min(row + stride, cells.Rows - 1); j++)
            {
                if (!goOn(cells.Place(i, j)))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private void Want(int column, int row, SortedSet<int> wanted)
    {
        int place = cells.Place(column, row);
        if (!cells.IsComputed(place))
        {
            wanted.Add(place);
        }
    }

    // A line of n cells has n - 1 gaps; a single cell is a block of its own.
    private static int Blocks(int cells, int stride) => Math.Max(1, (cells - 1 + stride - 1) / stride);
}
