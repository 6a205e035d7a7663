using AxisSim.Core.Comparisons;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>Time on target of the best motor over reductions and supplies.</summary>
internal static class SettingsGrid
{
    /// <summary>Writes it where there is more than one setting.</summary>
    public static void Write(Page page, ComparisonReport report)
    {
        if (report.Winner is not { } winner)
        {
            return;
        }

        CandidateResult[] same = [.. report.Results.Where(result => result.Candidate.Motor == winner.Candidate.Motor).OrderBy(result => result.Index)];
        double?[] ratios = [.. same.Select(result => result.Candidate.TotalReduction).Distinct()], volts = [.. same.Select(result => result.Candidate.SupplyVolts).Distinct()];
        if (same.Length < 2)
        {
            return;
        }

        page.Heading($"{winner.Candidate.Motor.Name}: seconds until on target, by total reduction and supply");
        page.Table(
            ["reduction", .. volts.Select(value => value is { } v ? $"{Say.Number(v)} V" : "as in the file")],
            ratios.Select(ratio => (IReadOnlyList<string>)
            [
                ratio is { } r ? Say.Number(r, 4) : "as in the file",
                .. volts.Select(value => Cell(same.FirstOrDefault(result => result.Candidate.TotalReduction == ratio && result.Candidate.SupplyVolts == value))),
            ]));
        if (same.Any(result => result.Fate == CandidateFate.Slower))
        {
            page.Text("> not simulated: the closed form says that it cannot be sooner. --all simulates every setting.");
        }
    }

    private static string Cell(CandidateResult? result) => result?.Fate switch
    {
        null => "-",
        CandidateFate.Ranked => Say.Number(result!.OnTargetSeconds),
        CandidateFate.Slower => "> " + Say.Number(result!.SlewSeconds),
        CandidateFate.TooHot => "too hot",
        CandidateFate.NotSettled => "no rest",
        _ => "none",
    };
}
