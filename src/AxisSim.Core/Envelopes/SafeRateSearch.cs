using AxisSim.Core.Batches;

namespace AxisSim.Core.Envelopes;

/// <summary>The search for one greatest safe rate, on a grid of whole multiples of a resolution.</summary>
internal sealed class SafeRateSearch
{
    /// <summary>A bound that is a whole number of resolutions but for rounding counts as one.</summary>
    private const double Slack = 1e-9;

    private readonly Dictionary<int, BatchEnd> _ends = [];
    private readonly RateSearch _search;
    private readonly double _resolution;
    private readonly double _top;
    private readonly EnvelopeLimit _topLimit;

    /// <param name="resolution">Resolution, rad/s.</param>
    /// <param name="least">Least rate, rad/s.</param>
    /// <param name="top">Greatest rate, rad/s, and why.</param>
    /// <param name="alsoTry">A rate that is tried besides, rad/s.</param>
    public SafeRateSearch(double resolution, double least, (double RateRadiansPerSecond, EnvelopeLimit Limit) top, double? alsoTry = null)
    {
        _resolution = resolution;
        (_top, _topLimit) = top;
        _search = new RateSearch(
            Math.Max(1, (int)Math.Ceiling((least / resolution) - Slack)),
            (int)Math.Floor(Math.Clamp((_top / resolution) + Slack, 0.0, 1e9)),
            alsoTry is { } own ? (int)Math.Floor((own / resolution) + Slack) : null);
    }

    /// <summary>Rates to try next, in resolutions; empty when the search is over.</summary>
    public IReadOnlyList<int> Next() => _search.Next();

    /// <summary>Takes how the move at a rate ended.</summary>
    public void Take(int rate, BatchEnd end)
    {
        _ends[rate] = end;
        _search.Take(rate, end == BatchEnd.Arrives);
    }

    /// <summary>What was found with a ramp.</summary>
    public SafeRate Result(double rampSeconds)
    {
        int? bad = _search.FirstBad;
        int[] above = [.. _search.Answers.Where(answer => answer.Value && answer.Key > bad).Select(answer => answer.Key)];
        return new SafeRate
        {
            RampSeconds = rampSeconds,
            RateRadiansPerSecond = _search.LastGood * _resolution ?? double.NaN,
            Limit = bad is null ? _topLimit : EnvelopeLimit.Fails,
            TopRadiansPerSecond = _top,
            TopLimit = _topLimit,
            FirstFailingRadiansPerSecond = bad * _resolution ?? double.NaN,
            Failure = bad is { } first ? _ends[first] : null,
            LeastTriedRadiansPerSecond = _ends.Count > 0 ? _ends.Keys.Min() * _resolution : double.NaN,
            Tried = _ends.Count,
            Island = above.Length > 0 ? new RateIsland(above[0] * _resolution, above[^1] * _resolution) : null,
        };
    }
}
