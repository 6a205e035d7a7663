using AxisSim.Core.Outcomes;

namespace AxisSim.Plots.Moves;

/// <summary>A quantity as points of a line: in each stretch its least and its greatest, so that what swings within a stretch is drawn as wide as it swings.</summary>
/// <param name="X">Times, s, ascending.</param>
/// <param name="Y">Values, in the unit drawn.</param>
internal sealed record Stroke(double[] X, double[] Y)
{
    /// <summary>A quantity of a trace, times a factor.</summary>
    public static Stroke Of(Trace trace, TraceQuantity quantity, double factor) =>
        Of(trace.FromSeconds, trace.ToSeconds, trace[quantity].Least, trace[quantity].Greatest, factor);

    /// <summary>A close-up, times a factor, from a time on and about a level.</summary>
    public static Stroke Of(CloseUp closeUp, double factor, double level = 0.0) =>
        Of(closeUp.FromSeconds, closeUp.ToSeconds, [.. closeUp.Least.Select(value => value - level)], [.. closeUp.Greatest.Select(value => value - level)], factor);

    /// <summary>The same line with its times counted from another moment.</summary>
    public Stroke After(double seconds) => new([.. X.Select(time => time - seconds)], Y);

    // Which came first is not known; the one nearer to the last point makes a smooth motion a smooth line, and in a swing both are passed.
    private static Stroke Of(IReadOnlyList<double> from, IReadOnlyList<double> to, IReadOnlyList<double> least, IReadOnlyList<double> greatest, double factor)
    {
        double[] x = new double[2 * to.Count], y = new double[2 * to.Count];
        double last = to.Count > 0 ? least[0] : 0.0;
        for (int i = 0; i < to.Count; i++)
        {
            double quarter = 0.25 * (to[i] - from[i]);
            bool up = Math.Abs(least[i] - last) <= Math.Abs(greatest[i] - last);
            (double first, double second) = up ? (least[i], greatest[i]) : (greatest[i], least[i]);
            (x[2 * i], y[2 * i]) = (from[i] + quarter, factor * first);
            (x[(2 * i) + 1], y[(2 * i) + 1]) = (to[i] - quarter, factor * second);
            last = double.IsFinite(second) ? second : last;
        }

        return new Stroke(x, y);
    }
}
