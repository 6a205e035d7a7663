namespace AxisSim.Core.Questions;

/// <summary>Share of the whole work that is done, from counts of runs within its stages; from several threads.</summary>
internal sealed class StageShare(Action<double>? report)
{
    private double from;
    private double part;
    private double expected = 1.0;
    private long begun;
    private long last;

    /// <summary>Begins a stage that makes up a part of the work and takes about so many runs.</summary>
    public void Begin(double fromShare, double partShare, double runs)
    {
        (from, part, expected, begun) = (fromShare, partShare, Math.Max(1.0, runs), last);
        report?.Invoke(from);
    }

    /// <summary>Takes the number of runs so far.</summary>
    public void Count(long runs)
    {
        last = Math.Max(last, runs);
        report?.Invoke(from + (part * Math.Min(0.99, (runs - begun) / expected)));
    }
}
