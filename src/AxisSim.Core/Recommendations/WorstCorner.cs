using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>The corner of the tolerances at which settings have the least to spare.</summary>
/// <param name="Factors">The corner.</param>
/// <param name="LoadFactor">The load factor there.</param>
/// <param name="NominalLoadFactor">The load factor of the scenario as it is.</param>
/// <param name="Singles">Load factor with one quantity at a time at its lower and upper end.</param>
/// <param name="Looked">How many corners were looked at.</param>
public sealed record WorstCorner(ToleranceFactors Factors, double LoadFactor, double NominalLoadFactor, IReadOnlyList<ToleranceEffect> Singles, int Looked)
{
    /// <summary>Two load factors nearer to each other than this are alike.</summary>
    public const double Alike = 0.02;

    /// <summary>Finds it: one quantity at a time, then all at their worse ends, then the neighbours of that corner until none is worse.</summary>
    internal static WorstCorner Find(Asker ask, MountSetup setup, AxisSettings settings, IReadOnlyList<CheckMove> moves, Tolerances tolerances, double also, Func<AxisSettings, double> mostRadians)
    {
        double most = mostRadians(settings);
        double[] Of(IEnumerable<ToleranceFactors> corners) => CornerFactors.Of(
            ask,
            [.. corners.Select(corner => (Func<double, IEnumerable<Batches.BatchCase>>)(factor => moves.Select(move => new LoadCase(move, corner).With(setup, settings, factor, most))))],
            also);
        ToleranceKind[] kinds = Enum.GetValues<ToleranceKind>();
        double[] first = Of([ToleranceFactors.Nominal, .. kinds.SelectMany(kind => new[] { ToleranceFactors.OneAt(tolerances, kind, false), ToleranceFactors.OneAt(tolerances, kind, true) })]);
        ToleranceEffect[] singles = [.. kinds.Select((kind, k) => new ToleranceEffect(kind, first[1 + (2 * k)], first[2 + (2 * k)]))];
        int mask = 0;
        for (int k = 0; k < kinds.Length; k++)
        {
            bool alike = Math.Abs(singles[k].Lower - singles[k].Upper) < Alike;
            bool upper = alike ? ((ToleranceFactors.HardMask >> k) & 1) == 1 : singles[k].Upper < singles[k].Lower;
            mask |= upper ? 1 << k : 0;
        }

        var known = new Dictionary<int, double>();
        while (true)
        {
            int[] asked = [.. Enumerable.Range(0, kinds.Length).Select(k => mask ^ (1 << k)).Prepend(mask).Where(corner => !known.ContainsKey(corner))];
            double[] answers = Of(asked.Select(corner => ToleranceFactors.Corner(tolerances, corner)));
            for (int i = 0; i < asked.Length; i++)
            {
                known[asked[i]] = answers[i];
            }

            int best = Enumerable.Range(0, kinds.Length).Select(k => mask ^ (1 << k)).Prepend(mask).MinBy(corner => known[corner]);
            if (known[best] >= known[mask])
            {
                return new WorstCorner(ToleranceFactors.Corner(tolerances, mask), known[mask], first[0], singles, known.Count);
            }

            mask = best;
        }
    }
}
