using System.Globalization;
using System.Runtime.CompilerServices;
using AxisSim.Cli.Json;
using AxisSim.Cli.Text;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Report.Pages;
using AxisSim.Report.Sheets;

namespace AxisSim.Cli.Output;

/// <summary>The files of a report.</summary>
internal static class ReportFiles
{
    private const string Page = "report.html", SheetName = "sheet.pdf";

    /// <summary>Writes the sheet, and the page last: where it is, the set is whole and of one run.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(OutputFolder folder, Scenario scenario, MoveReport report, IReadOnlyList<IReadOnlyList<SlewStage>> slews, TypedInput? typed, DateOnly date)
    {
        ReportPage page = Content(scenario, report, slews, typed, date);
        folder.Remove(Page);
        folder.Write(SheetName, stream => FigureWriter.WritePdf(SheetFigure.Both(page.Sheet), stream));
        folder.Write(Page, stream => ReportHtml.Write(page, stream));
    }

    /// <summary>The content of page and sheet.</summary>
    public static ReportPage Content(Scenario scenario, MoveReport report, IReadOnlyList<IReadOnlyList<SlewStage>> slews, TypedInput? typed, DateOnly date)
    {
        string program = $"{ProgramVersion.Record.Name} {ProgramVersion.Record.Version}", day = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var words = new BlockPage();
        MovePresenter.Write(words, report, []);
        ILookup<bool, Section> sections = words.Sections.ToLookup(section => section.Heading.StartsWith("Why", StringComparison.Ordinal) || section.Heading.StartsWith("What to try", StringComparison.Ordinal));
        Section[] rest = [.. sections[false].Select(section => section with { Heading = section.Heading.Replace("Figures", "Results", StringComparison.Ordinal) })];
        return new ReportPage
        {
            Name = scenario.Name,
            About = scenario.Description,
            Sheet = SheetBuilder.Of(new SheetInput
            {
                Name = scenario.Name,
                Site = scenario.SiteName,
                Program = program,
                Sha256 = scenario.Sha256,
                Settings = scenario.InForce,
                Date = date,
                Verdict = VerdictText.OfMount(report.Results),
                Setup = scenario.Setup,
                LatitudeRadians = scenario.LatitudeRadians,
                Typed = typed,
                Axes = [.. report.Results.Zip(slews).Select(pair => new SheetAxis(scenario.Setup.Axis(pair.First.Outcome.Axis), pair.First, pair.Second))],
            }),
            Lead = words.Lead,
            Reasons = [.. sections[true]],
            Figures = [.. report.Results.SelectMany(result => Figures(report, result))],

            // The cautions stand last on the screen, and here.
            Rest = [.. rest.SkipLast(1), LimitText.Section, rest[^1]],
            Provenance =
            [
                ("Scenario", scenario.Name),
                ("File", report.File),
                .. scenario.InForce.Select(setting => ("Laid over the file", setting)),
                ("SHA-256 of scenario and settings", scenario.Sha256),
                ("Program", program),
                ("Date", day),
            ],
        };
    }

    private static IEnumerable<(string Key, IFigure Figure)> Figures(MoveReport report, AxisResult result)
    {
        string name = report.Name, key = result.Outcome.Axis.Key(), words = result.Outcome.Axis.Words(), verdict = VerdictText.OfAxis(result);
        yield return ($"{key}-move", MoveSheet.Create(result.Trace, result.Outcome, $"{name}: {words}", $"{verdict}\n{MoveText.Sentence(report)}"));
        yield return ($"{key}-torque-speed", TorqueSpeedFigure.Create(result.Curves, $"{name}: torque and speed, {words}", result.Outcome.Facts.TotalReduction, verdict));
    }
}
