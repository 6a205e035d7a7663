using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Greatest common factor on inertia, imbalance and friction at which the simulated move still arrives.</summary>
internal static class LoadFactorStudy
{
    /// <summary>End of the search.</summary>
    public const double Most = 6.0;

    private static readonly double[] Scan = [1.3, Most];

    /// <summary>The factor that is asked of a remedy is among those tried, so that a remedy which reaches it also shows it.</summary>
    private static readonly double[] Near = [RemedySearch.AskedLoadFactor, 1.2];
    private static readonly double[] Between = [1.8, 2.6, 3.8];

    /// <summary>Runs that a search takes at most: two ends, three between, five rounds of two (a ratio of 1.6 to 0.4 % by thirds), and four to see whether the edge is sharp; for the share done.</summary>
    private const double MostRuns = 20.0;

    private const double Tolerance = 0.004;

    /// <summary>The factor to within 0.4 %, for a setup that arrives as it is.</summary>
    public static LoadFactor Of(MountSetup setup, MountAxis axis, double stepSeconds, Action<double>? progress = null)
    {
        int runs = 0;
        bool Arrives(double factor)
        {
            bool arrives = Arrival.Of(setup, axis, stepSeconds, factor);
            progress?.Invoke(Math.Min(1.0, Interlocked.Increment(ref runs) / MostRuns));
            return arrives;
        }

        // Both ends first: most setups either have plenty or are near the edge.
        int end = EdgeSearch.First(Scan, Arrives, wanted: false);
        if (end < 0)
        {
            return new LoadFactor(Most, AtLeast: true);
        }

        double[] marks = end == 0 ? [1.0, .. Near, Scan[0]] : [Scan[0], .. Between, Most];
        int fails = EdgeSearch.First(marks[1..^1], Arrives, wanted: false);
        int above = fails < 0 ? marks.Length - 1 : fails + 1;
        (double low, _) = EdgeSearch.Narrow(marks[above - 1], marks[above], Arrives, answerAtLow: true, Tolerance);
        return new LoadFactor(low, AtLeast: false, Sharp: Sharp(low, Arrives));
    }

    /// <summary>Whether factors well below arrive and factors well above fail, as they do where the motor is simply overloaded.</summary>
    private static bool Sharp(double edge, Func<double, bool> arrives)
    {
        double[] below = [1.0 + ((edge - 1.0) / 3.0), 1.0 + (2.0 * (edge - 1.0) / 3.0)];
        double[] above = [1.04 * edge, 1.15 * edge];
        return EdgeSearch.First(below, arrives, wanted: false) < 0 && EdgeSearch.First(above, arrives, wanted: true) < 0;
    }
}
