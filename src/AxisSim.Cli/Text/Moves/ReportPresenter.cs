using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>The page that goes with a report: the verdict, what was written, and what to do with it.</summary>
internal static class ReportPresenter
{
    /// <summary>Writes the page.</summary>
    public static void Write(Page page, MoveReport report, IReadOnlyList<string> files)
    {
        bool good = report.Results.All(result => result.Outcome.Verdict == MoveEnd.Arrives);
        page.Verdict(VerdictText.OfMount(report.Results), good);
        foreach (AxisResult result in report.Results)
        {
            page.Text(VerdictText.OfAxis(result));
            if (FiguresText.Thin(result.Outcome) is { } thin)
            {
                page.Text(thin);
            }
        }

        if (files.Count > 0)
        {
            page.Heading("Files written");
            foreach (string file in files)
            {
                page.Copyable(file, indent: 2);
            }

            Next(page, good);
        }

        Cautions.Write(page);
    }

    private static void Next(Page page, bool good)
    {
        page.Heading("What next");
        if (!good)
        {
            page.Item("-", "Do not enter these settings: sheet and report say so at their top. The report says why, and what to try.");
            return;
        }

        page.Item("1.", "Read report.html in a browser, and print sheet.pdf on both sides of one A4 paper.");
        page.Item("2.", "At the mount: check what side 2 lists first, then enter the numbers of side 1.");
        page.Item("3.", "Power on step by step, slow before fast, and write what you measure beside what is expected.");
    }
}
