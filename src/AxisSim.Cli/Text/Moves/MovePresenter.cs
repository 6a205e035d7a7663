using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>The page of a simulated move: verdict, why, what to try, figures, facts, notes, cautions.</summary>
internal static class MovePresenter
{
    /// <summary>Writes the page.</summary>
    public static void Write(Page page, MoveReport report, IReadOnlyList<string> files)
    {
        page.Verdict(VerdictText.OfMount(report.Results), report.Results.All(result => result.Outcome.Verdict == MoveEnd.Arrives));
        foreach (AxisResult result in report.Results)
        {
            page.Text(VerdictText.OfAxis(result));
            string?[] warnings = [FiguresText.Thin(result.Outcome), FiguresText.Unsure(result.Outcome)];
            foreach (string warning in warnings.OfType<string>())
            {
                page.Text(warning);
            }

            LateText.Write(page, report.Setup.Move, result.Outcome, report.AdviceFor(result.Outcome.Axis));

            WasteText.Write(page, result.Outcome, report.AdviceFor(result.Outcome.Axis));
        }

        DecidingText.Write(page, report);
        foreach (AxisResult result in report.Results.Where(result => result.Broken is null))
        {
            Why(page, report, result);
        }

        foreach (AxisResult result in report.Results)
        {
            page.Heading($"Figures, {result.Outcome.Axis.Words()}");
            page.Rows(FiguresText.Rows(report.Setup, result));
        }

        page.Heading("The move on the sky");
        page.Rows(MoveText.Rows(report));
        FactsText.Write(page, [.. report.Results.Select(result => (result.Outcome.Axis, result.Outcome.Facts))]);
        Notes(page, report);
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

    private static void Why(Page page, MoveReport report, AxisResult result)
    {
        AxisOutcome outcome = result.Outcome;
        if (outcome.Verdict == MoveEnd.Arrives)
        {
            CureText.Lifts(page, report.AdviceFor(outcome.Axis));
            return;
        }

        page.Heading($"Why, {outcome.Axis.Words()}");
        if (outcome.Verdict == MoveEnd.DoesNotSettle)
        {
            UnsettledText.Write(page, report, outcome, Direction(report.Setup.Move, outcome.Axis));
            return;
        }

        if (result.Diagnosis is { } diagnosis)
        {
            page.Text(CauseText.Cause(diagnosis));
            page.Text(CauseText.Shares(diagnosis.Why.Shares));
            if (diagnosis.Why.Changes.Count > 0)
            {
                page.Text($"The same move, run again with one thing changed: {string.Join("; ", CauseText.Changes(diagnosis.Why))}.");
            }
        }

        if (CauseText.LostSteps(outcome, Direction(report.Setup.Move, outcome.Axis)) is { } lost)
        {
            page.Text(lost);
        }

        if (SlewText.Runaway(report.Setup, outcome) is { } runaway)
        {
            page.Text(runaway);
        }

        if (result.Diagnosis is { } cured)
        {
            CureText.Write(page, report, outcome, cured);
        }
    }

    private static double Direction(MoveSettings move, MountAxis axis) => axis == MountAxis.Polar
        ? Math.Sign(move.End.PolarRadians - move.Start.PolarRadians)
        : Math.Sign(move.End.DeclinationRadians - move.Start.DeclinationRadians);

    private static void Notes(Page page, MoveReport report)
    {
        page.Heading("Notes");
        foreach (string note in report.Notes)
        {
            page.Item("-", note);
        }

        foreach (AxisResult result in report.Results)
        {
            string axis = result.Outcome.Axis.Key();
            page.Item("-", result.Step.Reason is { } reason
                ? $"{axis}: step {Microseconds(result.Step.StepSeconds)} instead of the {Microseconds(report.AskedStepSeconds)} asked for, because {reason}"
                : $"{axis}: step {Microseconds(result.Step.StepSeconds)}, as asked for");
        }
    }

    private static string Microseconds(double seconds) => Say.With(seconds * 1e6, "us", 4);
}
