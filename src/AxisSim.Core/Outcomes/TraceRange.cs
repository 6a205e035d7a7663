namespace AxisSim.Core.Outcomes;

/// <summary>One quantity of a trace: its least, mean and greatest value in each stretch.</summary>
/// <remarks>Values that are not a number are passed over; a stretch of nothing else has not-a-number for all three.</remarks>
public sealed class TraceRange
{
    private readonly List<double> _least;
    private readonly List<double> _mean;
    private readonly List<double> _greatest;

    internal TraceRange(int capacity)
    {
        _least = new List<double>(capacity);
        _mean = new List<double>(capacity);
        _greatest = new List<double>(capacity);
    }

    /// <summary>The least value of each stretch.</summary>
    public IReadOnlyList<double> Least => _least;

    /// <summary>The mean of each stretch over its steps.</summary>
    public IReadOnlyList<double> Mean => _mean;

    /// <summary>The greatest value of each stretch.</summary>
    public IReadOnlyList<double> Greatest => _greatest;

    internal void Add(double least, double mean, double greatest)
    {
        _least.Add(least);
        _mean.Add(mean);
        _greatest.Add(greatest);
    }

    internal void Set(int stretch, double least, double mean, double greatest)
    {
        _least[stretch] = least;
        _mean[stretch] = mean;
        _greatest[stretch] = greatest;
    }
}
