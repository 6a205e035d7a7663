using AxisSim.Core.Batches;
using AxisSim.Core.Questions;

namespace AxisSim.Core.Recommendations;

/// <summary>Load factors of groups of runs, each group as weak as its weakest run.</summary>
internal static class CornerFactors
{
    /// <summary>The factors; 0 where even the least that is tried fails.</summary>
    /// <param name="ask">Where to ask.</param>
    /// <param name="groups">For each group, its runs at a factor.</param>
    /// <param name="also">A factor that is tried in any case, so that whoever reaches it shows it.</param>
    public static double[] Of(Asker ask, IReadOnlyList<Func<double, IEnumerable<BatchCase>>> groups, double also)
    {
        // To 1.5 %: settings are compared by it, and the margin asked for is tried by itself.
        const int fineness = 16;
        ValueSearch[] searches = [.. groups.Select(_ => LoadFactors.Search(fromBelow: true, also, fineness))];
        EdgeFinder.Find(ask, [.. groups.Zip(searches).Select(one => one.Second.Question(one.First))]);
        return [.. searches.Select(search => search.Good ?? 0.0)];
    }
}
