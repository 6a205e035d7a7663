namespace AxisSim.Core.Recommendations;

/// <summary>Share of the whole work that is done, from counts of runs within its stages.</summary>
internal sealed class StageProgress(Action<string, double>? report)
{
    private string doing = "";
    private double from;
    private double to;
    private long at;
    private long expected = 1;
    private long last;

    /// <summary>Begins a stage that takes the work from one share to another in so many runs.</summary>
    public void Begin(string words, double fromShare, double toShare, long runs)
    {
        (doing, from, to, at, expected) = (words, fromShare, toShare, last, Math.Max(1, runs));
        report?.Invoke(doing, from);
    }

    /// <summary>Takes the number of runs so far; from several threads.</summary>
    public void Count(long runs)
    {
        last = Math.Max(last, runs);
        report?.Invoke(doing, from + ((to - from) * Math.Min(0.99, (double)(runs - at) / expected)));
    }
}
