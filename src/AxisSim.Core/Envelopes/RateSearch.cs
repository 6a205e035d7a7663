namespace AxisSim.Core.Envelopes;

/// <summary>Looks for the greatest of the whole numbers up to which every one that is tried is good, some at a time.</summary>
/// <remarks>
/// First an even scan; then ever finer between the last good one and the first bad one, until they are neighbours; then a look at what lies below,
/// for a band of bad ones may hide between two good ones of the scan. Every answer counts, whenever it came.
/// </remarks>
internal sealed class RateSearch(int least, int most, int? alsoTry = null)
{
    /// <summary>Even intervals of the scan.</summary>
    private const int ScanIntervals = 24;

    /// <summary>The lowest places of the scan are left out: such moves take longest and are the last to fail.</summary>
    private const int FirstOfScan = 2;

    /// <summary>Values tried at once between a good and a bad one.</summary>
    private const int Inner = 7;

    /// <summary>The look below goes from a quarter of the answer on, in twelfths.</summary>
    private const int BelowIntervals = 12;
    private const int FirstBelow = 3;

    private readonly SortedDictionary<int, bool> answers = [];
    private bool scanned;
    private bool lookedBelow;

    /// <summary>Questions that a search takes as a rule; for the share done.</summary>
    public static int Usual => ScanIntervals - FirstOfScan + 1 + (2 * Inner) + (BelowIntervals - FirstBelow);

    /// <summary>All answers so far, ascending.</summary>
    public IReadOnlyDictionary<int, bool> Answers => answers;

    /// <summary>The least bad one; null when there is none.</summary>
    public int? FirstBad => answers.Where(pair => !pair.Value).Select(pair => (int?)pair.Key).FirstOrDefault();

    /// <summary>The greatest good one below the first bad one; null when there is none.</summary>
    public int? LastGood => answers.Where(pair => pair.Value && !(pair.Key > FirstBad)).Select(pair => (int?)pair.Key).LastOrDefault();

    /// <summary>Takes an answer.</summary>
    public void Take(int value, bool good) => answers[value] = good;

    /// <summary>What to try next; empty when the search is over.</summary>
    public IReadOnlyList<int> Next()
    {
        if (least > most)
        {
            return [];
        }

        if (!scanned)
        {
            scanned = true;
            IEnumerable<int> scan = Enumerable.Range(FirstOfScan, ScanIntervals - FirstOfScan + 1).Select(i => Between(least, most, i, ScanIntervals));
            return New(alsoTry is { } own ? scan.Append(Math.Clamp(own, least, most)) : scan);
        }

        int good = LastGood ?? least - 1, bad = FirstBad ?? most + 1;
        if (FirstBad is not null && bad - good > 1)
        {
            return New(Enumerable.Range(1, Inner).Select(i => Between(good, bad, i, Inner + 1)).Where(value => value > good && value < bad));
        }

        if (!lookedBelow && good >= least)
        {
            lookedBelow = true;
            IReadOnlyList<int> below = New(Enumerable.Range(FirstBelow, BelowIntervals - FirstBelow).Select(i => Between(0, good, i, BelowIntervals)).Where(value => value >= least && FarFromTried(value, good)));
            return below;
        }

        return [];
    }

    // What is tried already within half an interval needs no second look.
    private bool FarFromTried(int value, int good) => !answers.Keys.Any(tried => 2.0 * Math.Abs(tried - value) < (double)good / BelowIntervals);

    private int[] New(IEnumerable<int> values) => [.. values.Distinct().Where(value => !answers.ContainsKey(value))];

    private static int Between(int from, int to, int part, int parts) => from + (int)((long)(to - from) * part / parts);
}
