using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>Which edge is looked for along a row of values.</summary>
internal enum EdgeKind
{
    /// <summary>The row begins where moves arrive: the last value up to which every one that was tried arrives.</summary>
    LastArriving,

    /// <summary>
    /// The row begins where moves fail: the first value that arrives together with all that was tried from it to the next of the scan. One that arrives by chance
    /// near a resonance does not count.
    /// </summary>
    FirstLasting,
}

/// <summary>The search for an edge along one number, some values at a time: a scan, then ever finer on both sides of the edge, then a look back.</summary>
/// <remarks>
/// The number lies on a row of places, whole numbers from a least to a greatest; what value a place stands for, rising or falling, is the owner's business.
/// Every answer counts, whenever it came: a failure that shows up late between two good values moves the edge there. The look back tries places that
/// lie far from any tried one, for a band of failures may hide between two good ones of the scan; it belongs to <see cref="EdgeKind.LastArriving"/> alone.
/// </remarks>
internal sealed class EdgeLine
{
    private readonly EdgeKind kind;
    private readonly int inner;
    private readonly int least;
    private readonly int[] scan;
    private readonly int[] beyond;
    private readonly int lookBackParts;
    private readonly SortedDictionary<int, MoveEnd> answers = [];
    private bool scanned;
    private bool wentBeyond;
    private bool lookedBack;

    /// <param name="kind">Which edge.</param>
    /// <param name="least">Least place that may be tried.</param>
    /// <param name="most">Greatest; below the least there is nothing to try.</param>
    /// <param name="scan">Places of the scan; those outside are left out.</param>
    /// <param name="lookBackParts">The look back tries the edge times k over this number, from a quarter of it on; 0 leaves it out.</param>
    /// <param name="beyond">Places that are tried only when nothing of the scan fails.</param>
    /// <param name="inner">Places tried at once between a good and a bad one.</param>
    public EdgeLine(EdgeKind kind, int least, int most, IEnumerable<int> scan, int lookBackParts = 0, IEnumerable<int>? beyond = null, int inner = 7)
    {
        (this.kind, this.least, this.lookBackParts, this.inner) = (kind, least, lookBackParts, inner);
        int[] Within(IEnumerable<int> places) => [.. places.Where(place => place >= least && place <= most).Distinct().Order()];
        this.scan = Within(scan);
        this.beyond = Within(beyond ?? []);
    }

    /// <summary>All answers so far, by place.</summary>
    public IReadOnlyDictionary<int, MoveEnd> Answers => answers;

    /// <summary>The place on the good side of the edge; null when there is none.</summary>
    public int? Good => kind == EdgeKind.LastArriving ? LastArriving : FirstLasting;

    /// <summary>The tried place on its bad side; null when there is none.</summary>
    public int? Bad => kind == EdgeKind.LastArriving ? FirstFailing : LastFailingBefore(Good);

    /// <summary>Takes how the move at a place ended.</summary>
    public void Take(int place, MoveEnd end) => answers[place] = end;

    /// <summary>Places to try next; empty when the search is over.</summary>
    public IReadOnlyList<int> Next()
    {
        if (!scanned)
        {
            scanned = true;
            return scan;
        }

        if (!wentBeyond && beyond.Length > 0 && FirstFailing is null)
        {
            wentBeyond = true;
            return beyond;
        }

        int[] finer = Finer();
        return finer.Length > 0 ? finer : LookBack();
    }

    private int? FirstFailing => First(pair => pair.Value != MoveEnd.Arrives);

    private int? LastArriving
    {
        get
        {
            int? bad = FirstFailing;
            return answers.Where(pair => pair.Value == MoveEnd.Arrives && !(pair.Key > bad)).Select(pair => (int?)pair.Key).LastOrDefault();
        }
    }

    private int? FirstLasting => First(pair => pair.Value == MoveEnd.Arrives && Lasts(pair.Key));

    private bool Lasts(int place)
    {
        int next = Array.Find(scan, mark => mark > place);
        return answers.Where(pair => pair.Key > place && pair.Key <= next).All(pair => pair.Value == MoveEnd.Arrives);
    }

    private int? LastFailingBefore(int? place) =>
        answers.Where(pair => pair.Value != MoveEnd.Arrives && !(pair.Key >= place)).Select(pair => (int?)pair.Key).LastOrDefault();

    private int? First(Func<KeyValuePair<int, MoveEnd>, bool> wanted) => answers.Where(wanted).Select(pair => (int?)pair.Key).FirstOrDefault();

    /// <summary>Places between both sides of the edge; what lies before the least place counts as the side where the row begins.</summary>
    private int[] Finer()
    {
        (int? from, int? to) = kind == EdgeKind.LastArriving ? (Good ?? least - 1, Bad) : (Bad ?? least - 1, Good);
        return to is { } end && from is { } start
            ? New(Enumerable.Range(1, inner).Select(i => start + (int)((long)(end - start) * i / (inner + 1))).Where(place => place > start && place < end))
            : [];
    }

    private int[] LookBack()
    {
        if (lookedBack || kind != EdgeKind.LastArriving || Good is not { } edge)
        {
            return [];
        }

        lookedBack = true;
        return New(Enumerable.Range(0, lookBackParts)
            .Where(part => 4 * part >= lookBackParts)
            .Select(part => (int)((long)edge * part / lookBackParts))
            .Where(place => place >= least && FarFromTried(place, edge)));
    }

    // What is tried already within half an interval needs no second look.
    private bool FarFromTried(int place, int edge) => !answers.Keys.Any(tried => 2L * Math.Abs(tried - place) * lookBackParts < edge);

    private int[] New(IEnumerable<int> places) => [.. places.Distinct().Where(place => !answers.ContainsKey(place))];
}
