using AxisSim.Core.Comparisons;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>Which motor and why, in a sentence or two.</summary>
internal static class ComparisonVerdict
{
    /// <summary>Times that differ by less than this share are told as equal (a choice of ours: settling alone may differ by as much with the pose).</summary>
    private const double Equal = 0.03;

    /// <summary>The verdict.</summary>
    public static string Of(ComparisonReport report)
    {
        string margin = Units.Percent(report.Margin);
        if (report.Winner is not { } winner)
        {
            CandidateResult? best = report.Results.Count > 0 ? report.Results[0] : null;
            return (report.Results.Count == 1 ? $"NO: the one candidate will not do with {margin} in hand." : $"NONE of the {Say.Count(report.Results.Count)} candidates will do with {margin} in hand.")
                + (best is null ? "" : $" {(report.Results.Count == 1 ? "" : "The nearest, ")}{CandidateText.Name(best)}: {CandidateText.Why(best, report.Margin)}.");
        }

        string rates = Say.List([.. winner.Axes.Select(axis => $"{Say.With(Units.Degrees(axis.RateRadiansPerSecond), "deg/s", 4)} ({axis.Axis.Words()})")]);
        return $"BEST: {CandidateText.Name(winner)}. With {margin} in hand it slews at {rates} and is on target, settled, {Units.Time(winner.OnTargetSeconds)} after the start.";
    }

    /// <summary>Why it wins.</summary>
    public static string Why(ComparisonReport report)
    {
        if (report.Winner is not { } winner)
        {
            return "";
        }

        CandidateResult[] others = [.. report.Best.Skip(1).Where(result => result.Fate == CandidateFate.Ranked)];
        CandidateResult[] equal = [.. others.Where(result => result.OnTargetSeconds <= (1.0 + Equal) * winner.OnTargetSeconds)];
        string next = others.Length == 0 ? "No other motor will do."
            : equal.Length > 0 ? $"As good within {Units.Percent(Equal)}: {Say.List([.. equal.Select(CandidateText.Name)])}. Between these choose by price, heat, noise and what fits."
            : $"The next motor, {CandidateText.Name(others[0])}, takes {Units.Time(others[0].OnTargetSeconds - winner.OnTargetSeconds)} longer.";
        return $"{next} The best one goes no faster because {CandidateText.Why(winner, report.Margin)}.";
    }
}
