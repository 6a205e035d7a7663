namespace AxisSim.Core.Maps;

/// <summary>The boundary between the cells of a map that are inside and those that are not.</summary>
/// <remarks>
/// Marching squares (common practice): the boundary crosses half-way between the centres of two neighbours that differ, and nowhere else; within
/// a square of four centres the crossings are joined by straight lines. Where only two opposite corners of a square are inside, it cuts off each of them: cells
/// that touch at a corner alone do not hang together, so a map never promises a way between them. At its ends the boundary runs on straight
/// through half a cell to the outer edge of the map.
/// </remarks>
public static class BoundaryTracer
{
    /// <summary>All pieces: first those that end at the edge of the map, then the closed ones.</summary>
    /// <param name="x">First key.</param>
    /// <param name="y">Second key.</param>
    /// <param name="inside">Whether a cell is inside, row by row: y * (number of x) + x.</param>
    /// <exception cref="ArgumentException">The number of cells is not that of the grid.</exception>
    public static IReadOnlyList<BoundaryLine> Trace(GridScale x, GridScale y, IReadOnlyList<bool> inside)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(inside);
        int columns = x.Centres.Count, rows = y.Centres.Count;
        if (inside.Count != columns * rows)
        {
            throw new ArgumentException($"A map of {columns} by {rows} cells needs {columns * rows} answers, not {inside.Count}.", nameof(inside));
        }

        var nodes = new Nodes(x, y);
        int[] next = new int[nodes.Count];
        bool[] entered = new bool[nodes.Count];
        Array.Fill(next, -1);
        Span<bool> corner = stackalloc bool[4];
        Span<int> edge = stackalloc int[4];
        for (int b = 0; b <= rows; b++)
        {
            for (int a = 0; a <= columns; a++)
            {
                // Corners and edges against the clock from the lower left; edge k runs from corner k to the next. The outermost ring repeats the cells at the edge.
                (corner[0], corner[1], corner[2], corner[3]) = (Cell(a, b), Cell(a + 1, b), Cell(a + 1, b + 1), Cell(a, b + 1));
                (edge[0], edge[1], edge[2], edge[3]) = (nodes.Level(a, b), nodes.Upright(a + 1, b), nodes.Level(a, b + 1), nodes.Upright(a, b));
                Join(corner, edge, next, entered);
            }
        }

        return Chains(nodes, next, entered);

        bool Cell(int a, int b) => inside[(Math.Clamp(b - 1, 0, rows - 1) * columns) + Math.Clamp(a - 1, 0, columns - 1)];
    }

    // A line leaves where the way round the square goes from inside to outside, and ends where that stretch of inside began.
    private static void Join(ReadOnlySpan<bool> corner, ReadOnlySpan<int> edge, int[] next, bool[] entered)
    {
        for (int from = 0; from < 4; from++)
        {
            if (!corner[from] || corner[(from + 1) % 4])
            {
                continue;
            }

            int to = (from + 3) % 4;
            while (corner[to])
            {
                to = (to + 3) % 4;
            }

            next[edge[from]] = edge[to];
            entered[edge[to]] = true;
        }
    }

    private static List<BoundaryLine> Chains(Nodes nodes, int[] next, bool[] entered)
    {
        var lines = new List<BoundaryLine>();
        for (int start = 0; start < next.Length; start++)
        {
            if (next[start] >= 0 && !entered[start])
            {
                lines.Add(new BoundaryLine(Walk(nodes, next, start), Closed: false));
            }
        }

        for (int start = 0; start < next.Length; start++)
        {
            if (next[start] >= 0)
            {
                lines.Add(new BoundaryLine(Walk(nodes, next, start), Closed: true));
            }
        }

        return lines;
    }

    // Takes the way apart as it goes, so that no piece is walked twice.
    private static List<BoundaryPoint> Walk(Nodes nodes, int[] next, int start)
    {
        var points = new List<BoundaryPoint> { nodes.Point(start) };
        int at = next[start];
        next[start] = -1;
        while (at >= 0 && at != start)
        {
            points.Add(nodes.Point(at));
            (at, next[at]) = (next[at], -1);
        }

        return points;
    }

    /// <summary>Numbers of the places where a boundary may cross: between two neighbours in a row (level) or in a column (upright) of the grid with its ring.</summary>
    private sealed class Nodes(GridScale x, GridScale y)
    {
        private readonly int _columns = x.Centres.Count;
        private readonly int _rows = y.Centres.Count;

        public int Count => ((_columns + 1) * (_rows + 2)) + ((_columns + 2) * (_rows + 1));

        public int Level(int a, int b) => (b * (_columns + 1)) + a;

        public int Upright(int a, int b) => ((_columns + 1) * (_rows + 2)) + (b * (_columns + 2)) + a;

        public BoundaryPoint Point(int node)
        {
            int first = Upright(0, 0);
            return node < first
                ? new BoundaryPoint(x.Edges[node % (_columns + 1)], Centre(y, node / (_columns + 1)))
                : new BoundaryPoint(Centre(x, (node - first) % (_columns + 2)), y.Edges[(node - first) / (_columns + 2)]);
        }

        private static double Centre(GridScale scale, int ringed) =>
            ringed == 0 ? scale.Edges[0] : ringed > scale.Centres.Count ? scale.Edges[^1] : scale.Centres[ringed - 1];
    }
}
