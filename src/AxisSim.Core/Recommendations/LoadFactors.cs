using AxisSim.Core.Batches;

namespace AxisSim.Core.Recommendations;

/// <summary>The greatest common factor on inertia, imbalance and friction at which runs still arrive, for many at once.</summary>
/// <remarks>Greatest is the last of a rising scan before the first that fails, narrowed between the two; an island above a failure does not count.</remarks>
internal static class LoadFactors
{
    private const int Inner = 4;
    private const int Rounds = 2;
    private static readonly double[] Scan = [0.3, 0.45, 0.6, 0.75, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.55, 1.75, 2.0, 2.4, 3.0, 4.0, 6.0];

    /// <summary>The end of the scan.</summary>
    public static double Most => Scan[^1];

    /// <summary>Factors of groups of runs, each group as weak as its weakest run; 0 where even the least factor fails.</summary>
    /// <param name="ask">The batch.</param>
    /// <param name="groups">For each group, its runs at a factor.</param>
    /// <param name="also">A factor that is tried in any case, so that whoever reaches it shows it.</param>
    public static double[] Of(BatchAsker ask, IReadOnlyList<Func<double, IEnumerable<BatchCase>>> groups, double also)
    {
        double[] marks = [.. Scan.Append(also).Distinct().Order()];
        double[] good = new double[groups.Count], bad = new double[groups.Count];
        Round(ask, groups, i => marks, good, bad, first: true);
        for (int round = 0; round < Rounds; round++)
        {
            Round(ask, groups, i => double.IsPositiveInfinity(bad[i]) || good[i] == 0.0 ? [] : [.. Enumerable.Range(1, Inner).Select(k => good[i] + ((bad[i] - good[i]) * k / (Inner + 1.0)))], good, bad, first: false);
        }

        return good;
    }

    private static void Round(BatchAsker ask, IReadOnlyList<Func<double, IEnumerable<BatchCase>>> groups, Func<int, double[]> marksOf, double[] good, double[] bad, bool first)
    {
        var cases = new List<BatchCase>();
        var owner = new List<(int Group, double Factor)>();
        double[][] marks = [.. Enumerable.Range(0, groups.Count).Select(marksOf)];
        for (int i = 0; i < groups.Count; i++)
        {
            foreach (double factor in marks[i])
            {
                foreach (BatchCase one in groups[i](factor))
                {
                    cases.Add(one);
                    owner.Add((i, factor));
                }
            }
        }

        BatchResult[] results = cases.Count == 0 ? [] : ask.Ask(cases);
        for (int i = 0; i < groups.Count; i++)
        {
            double lowest = first ? double.PositiveInfinity : bad[i];
            for (int k = 0; k < results.Length; k++)
            {
                if (owner[k].Group == i && results[k].End != BatchEnd.Arrives)
                {
                    lowest = Math.Min(lowest, owner[k].Factor);
                }
            }

            bad[i] = lowest;
            good[i] = Math.Max(first ? 0.0 : good[i], marks[i].Where(mark => mark < lowest).DefaultIfEmpty(0.0).Max());
        }
    }
}
