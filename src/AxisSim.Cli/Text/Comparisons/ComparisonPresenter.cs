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
        Settles(page, report);
        FitText.Write(page, report);
        SettingsGrid.Write(page, report);
        Assumptions.Write(page, report);
        Try(page, report, files);
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

    private static void Settles(Page page, ComparisonReport report)
    {
        if (!report.Results.Any(result => result.Fate == CandidateFate.NotSettled))
        {
            return;
        }

        page.Text(report.Settles.Count == 0
            ? "Of the motors that do not settle none does when watched for twice as long, or within a band of twice the width, either; axissim simulate tells what moves it."
            : "What does not settle may do so later or within a wider band; axissim simulate tells what moves it. Run as typed, at the rates above:");
        foreach ((string setting, IReadOnlyList<int> places) in report.Settles)
        {
            page.Text($"with this {Say.List([.. places.Select(place => $"{Say.Count(place + 1)} {report.Best[place].Candidate.Motor.Name}")])} {(places.Count == 1 ? "arrives and settles" : "arrive and settle")}:", indent: 2);
            page.Copyable(CommandText.Set(setting), indent: 4);
        }
    }

    private static void Try(Page page, ComparisonReport report, IReadOnlyList<string> files)
    {
        if (report.Winner is not { } winner)
        {
            return;
        }

        page.Gap();
        if (report.Try is not { } best)
        {
            page.Text("Run as typed, with every axis of the mount, none of the best candidates arrives and settles with this load factor: look at the axis that was not compared with axissim simulate.");
            return;
        }

        string which = best.Result == winner ? "the best one" : $"{CandidateText.Name(best.Result)}, the best that holds with every axis of the mount";
        page.Text($"Look at margin, settling and heat of {which} in full. {CarryText.First(CarryText.BestMotor, files)}Run as typed, {best.Line.PromiseUnder(1.0 + report.Margin)}:");
        page.Copyable(CarryText.Command("simulate", report.File, CarryText.BestMotor, files) + (report.Axes.Count < AxisNames.Of(report.Mount).Count ? $" --axis {report.Axes[0].Key()}" : ""), indent: 2);
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
