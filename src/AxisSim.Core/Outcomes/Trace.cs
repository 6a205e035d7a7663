namespace AxisSim.Core.Outcomes;

/// <summary>One axis over the whole run, stretch by stretch of time: of each quantity the least, the greatest and the mean of all steps in the stretch.</summary>
/// <remarks>
/// Nothing that a step showed is left out: between the least and the greatest of a stretch lie all of its steps, so a rotor that rings a hundred times a
/// second is as wide here as it is in every step. The number of stretches is bounded whatever the run lasts; only their length grows with it.
/// </remarks>
public sealed class Trace
{
    private readonly List<double> _from;
    private readonly List<double> _to;
    private readonly TraceRange[] _ranges;

    /// <summary>An empty trace.</summary>
    /// <param name="capacity">Stretches for which there is room without asking for memory.</param>
    public Trace(int capacity = 0)
    {
        _from = new List<double>(capacity);
        _to = new List<double>(capacity);
        _ranges = [.. Enumerable.Range(0, TraceQuantities.Count).Select(_ => new TraceRange(capacity))];
    }

    /// <summary>Start of each stretch, s; its steps end after it.</summary>
    public IReadOnlyList<double> FromSeconds => _from;

    /// <summary>End of each stretch and of its last step, s.</summary>
    public IReadOnlyList<double> ToSeconds => _to;

    /// <summary>Range of a quantity in each stretch, in the unit of its name.</summary>
    public TraceRange this[TraceQuantity quantity] => _ranges[(int)quantity];

    /// <summary>Number of stretches.</summary>
    public int Count => _to.Count;

    /// <summary>The settling from near, from the end of the slew on: what it is judged by. Empty when the run ended before.</summary>
    public CloseUp Settling { get; init; } = new(TraceQuantity.SettleErrorRadians);

    /// <summary>The loss of sync from near: the load angle shortly before and after. Empty when sync was kept.</summary>
    public CloseUp Loss { get; init; } = new(TraceQuantity.LoadAngleRadians);

    /// <summary>Adds a stretch; each span holds a value for each quantity, in the order of <see cref="TraceQuantity"/>.</summary>
    /// <param name="fromSeconds">Start, s.</param>
    /// <param name="toSeconds">End, s.</param>
    /// <param name="least">Least values.</param>
    /// <param name="mean">Means.</param>
    /// <param name="greatest">Greatest values.</param>
    /// <exception cref="ArgumentException">A span is of another length than there are quantities.</exception>
    public void Add(double fromSeconds, double toSeconds, ReadOnlySpan<double> least, ReadOnlySpan<double> mean, ReadOnlySpan<double> greatest)
    {
        if (least.Length != _ranges.Length || mean.Length != _ranges.Length || greatest.Length != _ranges.Length)
        {
            throw new ArgumentException($"A stretch has {_ranges.Length} quantities; {least.Length} least, {mean.Length} mean and {greatest.Length} greatest values were given.");
        }

        _from.Add(fromSeconds);
        _to.Add(toSeconds);
        for (int i = 0; i < _ranges.Length; i++)
        {
            _ranges[i].Add(least[i], mean[i], greatest[i]);
        }
    }
}
