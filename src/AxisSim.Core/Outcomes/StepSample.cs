namespace AxisSim.Core.Outcomes;

/// <summary>One step of a run, just after it was taken.</summary>
public readonly ref struct StepSample
{
    private readonly ReadOnlySpan<double> _values;

    internal StepSample(double timeSeconds, ReadOnlySpan<double> values)
    {
        TimeSeconds = timeSeconds;
        _values = values;
    }

    /// <summary>Time from the start of the move to the end of the step, s.</summary>
    public double TimeSeconds { get; }

    /// <summary>Value of a quantity, in the unit of its name.</summary>
    public double this[TraceQuantity quantity] => _values[(int)quantity];
}

/// <summary>Takes every step of a run as it is made, in order, from one thread.</summary>
public interface IStepSink
{
    /// <summary>Takes a step; the sample is good for this call only.</summary>
    void Take(in StepSample sample);
}
