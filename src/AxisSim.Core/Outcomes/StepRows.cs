namespace AxisSim.Core.Outcomes;

/// <summary>Every step of a run, kept in memory: 8 bytes a quantity and step.</summary>
public sealed class StepRows : IStepSink
{
    private readonly List<double> _times = [];
    private readonly List<double>[] _columns = [.. Enumerable.Range(0, TraceQuantities.Count).Select(_ => new List<double>())];

    /// <summary>End of each step from the start of the move, s.</summary>
    public IReadOnlyList<double> TimeSeconds => _times;

    /// <summary>A quantity at each step, in the unit of its name.</summary>
    public IReadOnlyList<double> this[TraceQuantity quantity] => _columns[(int)quantity];

    /// <summary>Number of steps.</summary>
    public int Count => _times.Count;

    /// <inheritdoc/>
    public void Take(in StepSample sample)
    {
        _times.Add(sample.TimeSeconds);
        for (int i = 0; i < _columns.Length; i++)
        {
            _columns[i].Add(sample[(TraceQuantity)i]);
        }
    }
}
