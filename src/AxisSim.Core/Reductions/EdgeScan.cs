namespace AxisSim.Core.Reductions;

/// <summary>Looks for the greatest value on a logarithmic scale up to which every one that is tried is good, some at a time.</summary>
/// <remarks>First a scan about a guess; below it when its least is bad; then ever finer between the last good and the first bad one. Every answer counts.</remarks>
internal sealed class EdgeScan
{
    /// <summary>Known to this share: finer would mean nothing beside a friction that is known to 30 %.</summary>
    public const double Tolerance = 0.02;

    /// <summary>Runs that a search takes as a rule; for the share done.</summary>
    public const int Usual = 13;

    private static readonly double[] s_around = [0.3, 0.5, 0.7, 0.85, 1.0, 1.2];
    private static readonly double[] s_below = [0.02, 0.05, 0.1, 0.2];
    // Fast motors need short steps, so that the greatest values cost most: they are tried only when all else arrives.
    private static readonly double[] s_above = [2.0, 3.0, 5.0];

    private const int Inner = 3;

    private readonly SortedDictionary<double, bool> _answers = [];
    private readonly double _least;
    private readonly double _guess;
    private readonly double _top;
    private int _round;

    /// <summary>A search.</summary>
    /// <param name="least">Least value that may be tried.</param>
    /// <param name="guess">Where the edge is expected.</param>
    /// <param name="top">Greatest value that may be tried.</param>
    public EdgeScan(double least, double guess, double top) => (_least, _guess, _top) = (least, Math.Clamp(guess, Math.Min(least, top), top), top);

    /// <summary>The least bad value; null when there is none.</summary>
    public double? FirstBad => _answers.Where(pair => !pair.Value).Select(pair => (double?)pair.Key).FirstOrDefault();

    /// <summary>The greatest good value below the first bad one; null when there is none.</summary>
    public double? LastGood => _answers.Where(pair => pair.Value && !(pair.Key > FirstBad)).Select(pair => (double?)pair.Key).LastOrDefault();

    /// <summary>Takes an answer.</summary>
    public void Take(double value, bool good) => _answers[value] = good;

    /// <summary>What to try next; empty when the search is over.</summary>
    public IReadOnlyList<double> Next()
    {
        if (!(_guess > 0.0 && _least <= _top))
        {
            return [];
        }

        switch (_round)
        {
            case 0:
                _round = 1;
                return Within(s_around);
            case 1:
                _round = 2;
                double[] more = FirstBad is null ? Within([.. s_above, _top / _guess]) : LastGood is null ? Within(s_below) : [];
                return more.Length > 0 ? more : Next();
            default:
                return LastGood is { } good && FirstBad is { } bad && bad / good > 1.0 + Tolerance
                    ? [.. Enumerable.Range(1, Inner).Select(i => good * Math.Pow(bad / good, i / (Inner + 1.0)))]
                    : [];
        }
    }

    private double[] Within(IEnumerable<double> shares) =>
        [.. shares.Select(share => Math.Clamp(share * _guess, _least, _top)).Distinct().Where(value => !_answers.ContainsKey(value))];
}
