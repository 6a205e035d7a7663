namespace AxisSim.Core.Outcomes;

/// <summary>One quantity over a part of a run, in stretches much shorter than those of the trace.</summary>
/// <param name="quantity">Which quantity.</param>
public sealed class CloseUp(TraceQuantity quantity)
{
    private readonly List<double> _from = [];
    private readonly List<double> _to = [];
    private readonly List<double> _least = [];
    private readonly List<double> _greatest = [];

    /// <summary>Which quantity.</summary>
    public TraceQuantity Quantity => quantity;

    /// <summary>Start of each stretch, s.</summary>
    public IReadOnlyList<double> FromSeconds => _from;

    /// <summary>End of each stretch and of its last step, s.</summary>
    public IReadOnlyList<double> ToSeconds => _to;

    /// <summary>The least value of each stretch, in the unit of the quantity's name.</summary>
    public IReadOnlyList<double> Least => _least;

    /// <summary>The greatest value of each stretch.</summary>
    public IReadOnlyList<double> Greatest => _greatest;

    /// <summary>Number of stretches.</summary>
    public int Count => _to.Count;

    /// <summary>Adds a stretch.</summary>
    /// <param name="fromSeconds">Start, s.</param>
    /// <param name="toSeconds">End, s.</param>
    /// <param name="least">Least value.</param>
    /// <param name="greatest">Greatest value.</param>
    public void Add(double fromSeconds, double toSeconds, double least, double greatest)
    {
        _from.Add(fromSeconds);
        _to.Add(toSeconds);
        _least.Add(least);
        _greatest.Add(greatest);
    }

    internal void EnsureCapacity(int stretches)
    {
        foreach (List<double> column in (ReadOnlySpan<List<double>>)[_from, _to, _least, _greatest])
        {
            column.EnsureCapacity(stretches);
        }
    }
}
