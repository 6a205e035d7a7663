namespace AxisSim.Cli.Text.Reductions;

internal static class ReductionReasons
{
    public static void Write(Page page, ReductionReport report)
    {
        page.Text(report.Result.Match.ToString());
        foreach (var p in report.Result.Points) page.Text($"{p.Facts.TotalReduction} {p.Bound} bad {Units.Degrees(p.FirstFailingRateRadiansPerSecond)} acc at {Units.Degrees(p.AccelerationTriedAtRadiansPerSecond)} {p.AccelerationFailure} {p.Shares}");
        page.Text($"{report.Result.MovesRun} best {report.Result.Match.OptimumRatio} text {report.Result.Match.TextbookRatio}");
    }
}
