using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>How often settings fail when the mount differs from its scenario at random within the tolerances.</summary>
/// <param name="Samples">Mounts that were drawn.</param>
/// <param name="Failed">Of these, how many stall or slip in one of the moves.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="UpperBound">Upper bound of the probability, one-sided at <see cref="Confidence"/> (<see cref="ClopperPearson"/>).</param>
/// <remarks>The bound speaks of the mounts that the tolerances describe, not of what the tolerances leave out.</remarks>
public readonly record struct StallProbability(int Samples, int Failed, int Seed, double UpperBound)
{
    /// <summary>Confidence of the bound.</summary>
    public const double Confidence = 0.95;

    /// <summary>Draws mounts and runs each through every move.</summary>
    internal static StallProbability Of(Asker ask, MountSetup setup, AxisSettings settings, IReadOnlyList<CheckMove> moves, Tolerances tolerances, int samples, int seed)
    {
        ToleranceFactors[] drawn = Draw(tolerances, samples, seed);
        BatchResult[] results = ask.Ask([.. moves.SelectMany(move => drawn.Select(factors => new LoadCase(move, factors).With(setup, settings, 1.0)))]);
        int failed = Enumerable.Range(0, samples).Count(i => Enumerable.Range(0, moves.Count).Any(m => results[(m * samples) + i].End != MoveEnd.Arrives));
        return new StallProbability(samples, failed, seed, ClopperPearson.Upper(failed, samples, Confidence));
    }

    /// <summary>The mounts of a seed.</summary>
    internal static ToleranceFactors[] Draw(Tolerances tolerances, int samples, int seed)
    {
        var random = new SplitMix64((ulong)seed);
        return [.. Enumerable.Range(0, samples).Select(_ => ToleranceFactors.Sample(tolerances, random))];
    }
}
