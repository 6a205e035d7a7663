using AxisSim.Cli.Input;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>The page of a comparison: verdict, ranking, why the others lose, what was assumed.</summary>
internal static class ComparisonPresenter
{
    private const int LongestName = 24;

    private const int LongestLimit = 15;

    /// <summary>Slews that differ by less than this share are told as equally fast (a choice of ours).</summary>
    private const double AsFast = 0.005;

    /// <summary>Writes the page.</summary>
    public static void Write(Page page, ComparisonReport report, IReadOnlyList<string> files)
    {
        page.Verdict(ComparisonVerdict.Of(report), report.Winner is not null);
        if (ComparisonVerdict.Why(report) is { Length: > 0 } why)
        {
            page.Text(why);
        }

        IReadOnlyList<CandidateResult> best = report.Best;
        page.Heading("Best setting of each motor, the soonest on target first: rates in deg/s, times in s");
        page.Table(Head(report), best.Select((result, i) => Row(result, i, report)));
        page.Gap();
        page.Table(["#  ", "winding, degC", "power, W", "full step, arcsec", "microstep, arcsec", "load/rotor", "worm locks"], best.Select(Figures));
        page.Gap();
        page.Text("Power: mean from the supply over the slew, all axes. Winding: its hottest, after slewing, tracking or holding without end. Load/rotor: inertia of the load at the motor's shaft over that of the rotor, at the start; of two axes the larger.");
        page.Heading(report.Winner is null ? "Why they fail" : "Why the others lose");
        Reasons(page, report, best);
        if (report.Results.Any(result => result.Fate == CandidateFate.NotSettled))
        {
            page.Text("What does not settle may do so later or within a wider band; axissim simulate tells what moves it. Look again with either of:");
            page.Copyable(CommandText.Set($"move.observe={Say.Number(2.0 * report.Mount.Move.ObserveSeconds)} s"), indent: 2);
            page.Copyable(CommandText.Set($"settling.tolerance={Say.Number(2.0 * Units.Arcseconds(report.Mount.Move.SettleToleranceRadians))} arcsec"), indent: 2);
        }

        FitText.Write(page, report);
        SettingsGrid.Write(page, report);
        Assumptions.Write(page, report);
        if (report.Winner is { } first)
        {
            page.Gap();
            page.Text("Look at margin, settling and heat of the best one in full:");
            page.Copyable(CommandText.Of("simulate", report.File, report.Settings, CandidateSettings.Of(report.Mount, first)) + (report.Axes.Count < AxisNames.Of(report.Mount).Count ? $" --axis {report.Axes[0].Key()}" : ""), indent: 2);
        }

        if (files.Count > 0)
        {
            page.Heading("Files written");
            foreach (string file in files)
            {
                page.Copyable(file, indent: 2);
            }
        }

        Cautions.Write(page);
    }

    // Motors that lose for the same reason share a line.
    private static void Reasons(Page page, ComparisonReport report, IReadOnlyList<CandidateResult> best)
    {
        var losers = best.Select((result, i) => (Place: i + 1, Why: Reason(report, result), Result: result)).Where(one => one.Result != report.Winner);
        foreach (var same in losers.GroupBy(one => one.Why))
        {
            page.Item("-", $"{Say.List([.. same.Select(one => $"{Say.Count(one.Place)} {one.Result.Candidate.Motor.Name}")])}: {same.Key}.");
        }
    }

    private static string Reason(ComparisonReport report, CandidateResult result) =>
        report.Winner is { } winner && result.Fate == CandidateFate.Ranked && result.SlewSeconds <= winner.SlewSeconds * (1.0 + AsFast) && !result.SlowedToSettle
            ? "slews as fast as the best, but settles later" : CandidateText.Why(result, report.Margin);

    private static string[] Head(ComparisonReport report) =>
        ["#  ", "motor".PadRight(LongestName), "red.", "V", .. report.Axes.Select(axis => axis == MountAxis.Polar ? "polar" : "decl."), "slew", "settle", "total", "limit".PadRight(LongestLimit)];

    private static string[] Row(CandidateResult result, int index, ComparisonReport report)
    {
        string name = result.Candidate.Motor.Name;
        return
        [
            Mark(index),
            (name.Length > LongestName ? name[..(LongestName - 2)] + ".." : name).PadRight(LongestName),
            CandidateText.Reduction(result),
            CandidateText.Volts(result),
            .. report.Axes.Select(axis => Cell(Units.Degrees(result.Axes.First(one => one.Axis == axis).RateRadiansPerSecond))),
            result.Fate is CandidateFate.Slower or CandidateFate.Hopeless ? "-" : Cell(result.SlewSeconds),
            Cell(result.SettleSeconds),
            Cell(result.OnTargetSeconds),
            CandidateText.Status(result).PadRight(LongestLimit),
        ];
    }

    private static string[] Figures(CandidateResult result, int index) =>
    [
        Mark(index),
        Cell(Math.Round(result.Axes.Max(axis => axis.ContinuousCelsius))),
        Cell(result.MeanWatts),
        Cell(result.Axes.Max(axis => Units.Arcseconds(axis.Facts.FullStepRadians))),
        Cell(result.Axes.Max(axis => Units.Arcseconds(axis.Facts.MicrostepRadians))),
        Say.Number(result.Axes.Max(axis => axis.InertiaRatio), 2),
        result.Axes.All(axis => axis.Facts.SelfLocking) ? "yes" : result.Axes.Any(axis => axis.Facts.SelfLocking) ? "one does" : "no",
    ];

    private static string Mark(int index) => Say.Count(index + 1).PadRight(3);

    private static string Cell(double value) => double.IsNaN(value) ? "-" : Say.Number(value);
}
