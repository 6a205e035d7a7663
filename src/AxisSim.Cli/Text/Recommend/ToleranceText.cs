using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>Tolerances, corners and probabilities in words.</summary>
internal static class ToleranceText
{
    private static readonly (ToleranceKind Kind, string Name)[] Names =
    [
        (ToleranceKind.Imbalance, "imbalance"), (ToleranceKind.Friction, "friction"), (ToleranceKind.Cold, "cold grease"),
        (ToleranceKind.Supply, "supply"), (ToleranceKind.MotorTorque, "motor torque"), (ToleranceKind.Inertia, "inertia"),
        (ToleranceKind.Damping, "damping"),
    ];

    /// <summary>The ranges.</summary>
    public static string Ranges(Tolerances tolerances) =>
        string.Join(", ", Names.Select(one => $"{one.Name} +-{Units.Percent(tolerances.Share(one.Kind))}")) + (tolerances.Distribution == ToleranceDistribution.Normal ? " (two standard deviations)" : " (uniform)");

    /// <summary>The worst corner.</summary>
    public static string Worst(WorstCorner worst)
    {
        ToleranceFactors f = worst.Factors;
        double[] factors = [f.Imbalance, f.Friction, f.Cold, f.Supply, f.MotorTorque, f.Inertia, f.Damping];
        IEnumerable<string> high = Names.Where((_, i) => factors[i] > 1.0).Select(one => one.Name), low = Names.Where((_, i) => factors[i] < 1.0).Select(one => one.Name);
        return $"{Words("high", high)}{(high.Any() && low.Any() ? "; " : "")}{Words("low", low)}";
    }

    /// <summary>The quantity that costs most by itself.</summary>
    public static string Strongest(WorstCorner worst)
    {
        ToleranceEffect effect = worst.Singles.MinBy(one => Math.Min(one.Lower, one.Upper));
        if (Math.Min(effect.Lower, effect.Upper) > worst.NominalLoadFactor - WorstCorner.Alike)
        {
            return $"no single one of them changes the load factor of {Say.Number(worst.NominalLoadFactor)} of the file's rate at the rated current";
        }

        string name = Names.First(one => one.Kind == effect.Kind).Name;
        bool upper = effect.Upper < effect.Lower;
        return $"by itself {name} at its {(upper ? "upper" : "lower")} end costs most (load factor {Say.Number(Math.Min(effect.Lower, effect.Upper))} instead of {Say.Number(worst.NominalLoadFactor)} at the file's rate and the rated current)";
    }

    /// <summary>What the random draw says.</summary>
    public static string Probability(StallProbability p) =>
        $"{Say.Count(p.Failed)} of {Say.Count(p.Samples)} mounts drawn at random fail in the hardest moves (seed {Say.Count(p.Seed)}, no margin on top): the probability is below {Units.Percent(p.UpperBound)} with 95 % confidence (Clopper-Pearson, one-sided)";

    private static string Words(string end, IEnumerable<string> names) => names.Any() ? $"{end} {Say.List([.. names])}" : "";
}
