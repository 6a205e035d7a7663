namespace AxisSim.Core.Maps;

/// <summary>The values of one key of a map, in any unit, and the edges of the cells around them.</summary>
/// <remarks>Half-way between two values on a logarithmic scale is their geometric mean. The outermost cells are as wide outwards as inwards.</remarks>
public sealed class GridScale
{
    private readonly double[] _centres;
    private readonly double[] _edges;

    /// <summary>Makes a scale.</summary>
    /// <param name="centres">Values, ascending and finite; positive on a logarithmic scale.</param>
    /// <param name="logarithmic">Whether steps are ratios.</param>
    /// <exception cref="ArgumentException">There is no value, or they do not ascend, or one of them cannot be on such a scale.</exception>
    public GridScale(IReadOnlyList<double> centres, bool logarithmic)
    {
        ArgumentNullException.ThrowIfNull(centres);
        if (centres.Count == 0)
        {
            throw new ArgumentException("A scale needs at least one value.", nameof(centres));
        }

        for (int i = 0; i < centres.Count; i++)
        {
            if (!double.IsFinite(centres[i]) || (logarithmic && centres[i] <= 0.0) || (i > 0 && !(centres[i] > centres[i - 1])))
            {
                throw new ArgumentException($"Value {i} of a scale, {centres[i]:R}, must be finite, above the one before it{(logarithmic ? ", and positive on a logarithmic scale" : "")}.", nameof(centres));
            }
        }

        _centres = [.. centres];
        Logarithmic = logarithmic;
        _edges = MakeEdges(_centres, logarithmic);
    }

    /// <summary>The values.</summary>
    public IReadOnlyList<double> Centres => _centres;

    /// <summary>Whether steps are ratios.</summary>
    public bool Logarithmic { get; }

    /// <summary>Edges of the cells, one more than there are values: cell i lies between edges i and i + 1.</summary>
    public IReadOnlyList<double> Edges => _edges;

    /// <summary>The value at a share of the way from the first edge to the last.</summary>
    public double At(double share)
    {
        (double from, double to) = (_edges[0], _edges[^1]);
        return Logarithmic ? Math.Exp((Math.Log(from) * (1.0 - share)) + (Math.Log(to) * share)) : (from * (1.0 - share)) + (to * share);
    }

    /// <summary>How far a value is on the way from the first edge to the last, 0 to 1 between them.</summary>
    public double ShareOf(double value)
    {
        (double from, double to) = (_edges[0], _edges[^1]);
        return Logarithmic ? Math.Log(value / from) / Math.Log(to / from) : (value - from) / (to - from);
    }

    /// <summary>The cell that holds a value; -1 outside all cells.</summary>
    public int IndexOf(double value)
    {
        if (!(value >= _edges[0] && value <= _edges[^1]))
        {
            return -1;
        }

        int at = Array.BinarySearch(_edges, value);
        return Math.Min(at >= 0 ? at : ~at - 1, _centres.Length - 1);
    }

    private static double[] MakeEdges(double[] centres, bool logarithmic)
    {
        int count = centres.Length;
        double[] edges = new double[count + 1];
        if (count == 1)
        {
            double room = centres[0] == 0.0 ? 1.0 : 0.5 * Math.Abs(centres[0]);
            (edges[0], edges[1]) = logarithmic ? (centres[0] / 2.0, centres[0] * 2.0) : (centres[0] - room, centres[0] + room);
            return edges;
        }

        for (int i = 1; i < count; i++)
        {
            edges[i] = Between(centres[i - 1], centres[i], logarithmic);
        }

        edges[0] = logarithmic ? centres[0] * (centres[0] / edges[1]) : centres[0] - (edges[1] - centres[0]);
        edges[count] = logarithmic ? centres[^1] * (centres[^1] / edges[count - 1]) : centres[^1] + (centres[^1] - edges[count - 1]);
        return edges;
    }

    // Halved and rooted one by one: the sum or product of two huge numbers overflows.
    private static double Between(double low, double high, bool logarithmic) =>
        logarithmic ? Math.Sqrt(low) * Math.Sqrt(high) : (0.5 * low) + (0.5 * high);
}
