using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>The greatest common factor on inertia, imbalance and friction at which moves still arrive, for many groups of moves at once.</summary>
/// <remarks>
/// Greatest is the last factor up to which every one that was tried arrives, to 0.4 %; an island of arrival above a failure does not count, but makes the edge no sharp one. A margin of 30 % means a
/// load factor of 1.3 (<see cref="OfMargin"/>): that is what "margin" means in every command.
/// </remarks>
internal static class LoadFactors
{
    /// <summary>The end of the search.</summary>
    public const double Most = 6.0;

    private const int LookBackParts = 6;
    private static readonly double[] FromOne = [1.0, 1.1, 1.2, 1.3, 1.45, 1.65, 1.9, 2.2, 2.6, 3.1, 3.8, 4.8, Most];
    private static readonly double[] BelowOne = [0.3, 0.45, 0.6, 0.75, 0.9];

    /// <summary>The load factor that a margin stands for: 1.3 for 0.3.</summary>
    public static double OfMargin(double share) => 1.0 + share;

    /// <summary>A search for the factor of a group of moves.</summary>
    /// <param name="fromBelow">Whether the moves may fail at a factor of one.</param>
    /// <param name="also">A factor that is tried in any case, so that whoever reaches it shows it.</param>
    /// <param name="fineness">Finer places between two marks.</param>
    public static ValueSearch Search(bool fromBelow, double? also = null, int fineness = EdgeRow.Fine)
    {
        IEnumerable<double> marks = fromBelow ? BelowOne.Concat(FromOne) : FromOne;
        var row = new EdgeRow([.. (also is { } one && one > marks.First() && one < Most ? marks.Append(one) : marks).Distinct().Order()], fineness);

        // Where a factor of one arrives, it is known to.
        return new ValueSearch(row, new EdgeLine(EdgeKind.LastArriving, fromBelow ? 0 : 1, row.Last, row.Marks(), LookBackParts));
    }

    /// <summary>What a search that began where the move arrives has found.</summary>
    public static LoadFactor Result(ValueSearch search) => new(search.Good ?? 1.0, AtLeast: search.Bad is null, Sharp: !search.HasIsland);
}
