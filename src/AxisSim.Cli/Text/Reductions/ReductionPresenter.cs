namespace AxisSim.Cli.Text.Reductions;

/// <summary>The page of the lesson on the reduction.</summary>
internal static class ReductionPresenter
{
    /// <summary>Writes the page.</summary>
    public static void Write(Page page, IReadOnlyList<ReductionReport> reports, IReadOnlyList<string> files)
    {
        foreach (ReductionReport report in reports)
        {
            page.Verdict(ReductionVerdict.Of(report), ReductionVerdict.Good(report));
        }

        foreach (ReductionReport report in reports)
        {
            ReductionTables.Write(page, report);
            ReductionReasons.Write(page, report);
        }

        ReductionAdvice.Write(page, reports);
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
}
