namespace AxisSim.Core.Outcomes;

/// <summary>The stretch of one quantity that is being watched.</summary>
internal struct OneStretch
{
    /// <summary>Start, s.</summary>
    public double FromSeconds;

    /// <summary>End of its latest step, s.</summary>
    public double ToSeconds;

    /// <summary>Steps so far.</summary>
    public int Steps;

    private double _least;
    private double _greatest;

    /// <summary>The least value so far; not a number when there was none.</summary>
    public readonly double Least => _least <= _greatest ? _least : double.NaN;

    /// <summary>The greatest value so far; not a number when there was none.</summary>
    public readonly double Greatest => _least <= _greatest ? _greatest : double.NaN;

    /// <summary>An empty stretch that begins at a time.</summary>
    public static OneStretch At(double seconds) => new() { FromSeconds = seconds, ToSeconds = seconds, _least = double.PositiveInfinity, _greatest = double.NegativeInfinity };

    /// <summary>Takes a step; a value that is not a number is passed over.</summary>
    public void Take(double seconds, double value)
    {
        _least = value < _least ? value : _least;
        _greatest = value > _greatest ? value : _greatest;
        ToSeconds = seconds;
        Steps++;
    }
}
