using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Maps;

/// <summary>The cells of a map: column after column, each from its first row up; one more place holds the user's own point.</summary>
/// <remarks>A few bytes a cell: the end, and only those figures that the metric brings.</remarks>
public sealed class MapCells
{
    private readonly byte[] ends;
    private readonly bool[] computed;
    private readonly double[] failure;
    private readonly double[] slew;
    private readonly double[] settle;
    private readonly double[] celsius;
    private readonly double[] margin;

    /// <summary>An empty map of so many columns and rows.</summary>
    public MapCells(int columns, int rows, MapMetric metric)
    {
        (Columns, Rows, Metric) = (columns, rows, metric);
        int places = Count + 1;
        bool settles = metric is MapMetric.Settle or MapMetric.Duration or MapMetric.Temperature;
        ends = new byte[places];
        computed = new bool[places];
        failure = new double[places];
        slew = new double[places];
        settle = settles ? new double[places] : [];
        celsius = settles ? new double[places] : [];
        margin = metric == MapMetric.Margin ? new double[places] : [];
    }

    /// <summary>Columns: values of the first key.</summary>
    public int Columns { get; }

    /// <summary>Rows: values of the second key.</summary>
    public int Rows { get; }

    /// <summary>What the map shows.</summary>
    public MapMetric Metric { get; }

    /// <summary>Cells, without the own point.</summary>
    public int Count => Columns * Rows;

    /// <summary>The place of the user's own point.</summary>
    public int OwnPlace => Count;

    /// <summary>The place of a cell.</summary>
    public int Place(int column, int row) => (column * Rows) + row;

    /// <summary>How a place ends; <see cref="MoveEnd.Unknown"/> when it is not known yet.</summary>
    public MoveEnd End(int place) => (MoveEnd)ends[place];

    /// <summary>Whether a place was computed rather than filled in.</summary>
    public bool IsComputed(int place) => computed[place];

    /// <summary>All of a place; only its end where it was filled in.</summary>
    public CellResult this[int place] => !computed[place] ? CellResult.Bare(End(place)) : new CellResult(
        End(place),
        failure[place],
        slew[place],
        settle.Length > 0 ? settle[place] : double.NaN,
        celsius.Length > 0 ? celsius[place] : double.NaN,
        margin.Length > 0 ? margin[place] : double.NaN);

    /// <summary>Takes in what was computed of a place.</summary>
    public void Set(int place, in CellResult result)
    {
        ends[place] = (byte)result.End;
        failure[place] = result.FailureSeconds;
        slew[place] = result.SlewSeconds;
        if (settle.Length > 0)
        {
            settle[place] = result.SettleSeconds;
            celsius[place] = result.ContinuousCelsius;
        }

        if (margin.Length > 0)
        {
            margin[place] = result.TorqueMargin;
        }

        computed[place] = true;
    }

    /// <summary>Fills in the end of a cell that lies among equals.</summary>
    public void Fill(int place, MoveEnd end)
    {
        if (!computed[place])
        {
            ends[place] = (byte)end;
        }
    }

    /// <summary>How many cells were computed.</summary>
    public int ComputedCount() => computed.AsSpan(0, Count).Count(true);

    /// <summary>How many cells end so.</summary>
    public int CountOf(MoveEnd end) => ends.AsSpan(0, Count).Count((byte)end);
}
