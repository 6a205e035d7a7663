using AxisSim.Cli.Input;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>What to try after a failure: the ranked cures with the settings to copy, and those that do not help.</summary>
internal static class CureText
{
    /// <summary>Writes the part "what to try".</summary>
    public static void Write(Page page, MoveReport report, AxisOutcome outcome, Diagnosis diagnosis)
    {
        MountAxis axis = outcome.Axis;
        AxisAdvice advice = report.AdviceFor(axis);
        page.Heading($"What to try, {axis.Words()}");
        page.Text((advice.Cures.Count, advice.Pairs.Count) switch
        {
            (0, 0) when diagnosis.Why.Limit == Limit.Clutch => "No single change of those tried, and no two together, let the move arrive with 10 % to spare: the load is too much for clutch and motor as they are.",
            (0, 0) => "No single change of those tried, and no two together, let the move arrive with 10 % to spare: it takes another motor, another reduction, or less load. axissim compare and axissim reduction show which.",
            (0, _) => "No single change of those tried lets the move arrive with 10 % to spare. These two together do, each pair by itself:",
            (1, _) => "One change alone lets the move arrive with inertia, imbalance and friction 10 % above those given:",
            _ => "Any one of these lets the move arrive with inertia, imbalance and friction 10 % above those given. Each is the smallest change of its kind that does; the smallest comes first.",
        });
        CureAdvice[] told = [.. advice.Cures.Count > 0 ? advice.Cures : advice.Pairs];
        Items(page, told);
        Unhelpful(page, diagnosis.Cures.Alone, Cure.AskedLoadFactor);
        NotTried(page, report, axis, diagnosis);
        if (Array.Find(told, one => one.Settings.Count > 0) is { } first)
        {
            page.Text("To see the first of them:");
            page.Copyable(CommandText.Of("simulate", report.File, report.Laid, first.Settings), indent: 5);
        }
    }

    /// <summary>What lifts a thin load factor.</summary>
    public static void Lifts(Page page, AxisAdvice advice)
    {
        if (advice.Lifts.Count == 0)
        {
            return;
        }

        page.Heading($"What to try, {advice.Axis.Words()}");
        page.Text($"{(advice.Lifts.Count == 1 ? "This lifts" : "Each of these lifts")} the load factor to {Say.Number(LoadFactor.Usual)} or more; the smallest change comes first.");
        Items(page, advice.Lifts);
    }

    /// <summary>Numbered sentences with their settings.</summary>
    public static void Items(Page page, IReadOnlyList<CureAdvice> advice)
    {
        for (int i = 0; i < advice.Count; i++)
        {
            page.Item(Say.Count(i + 1) + ".", advice[i].Sentence);
            if (advice[i].Settings.Count > 0)
            {
                page.Copyable(string.Join(' ', advice[i].Settings.Select(CommandText.Set)), indent: 5);
            }
        }
    }

    private static void Unhelpful(Page page, IReadOnlyList<Cure> cures, double factor)
    {
        string[] scant = [.. cures.Where(cure => cure is { To: null, ArrivesAtTried: true }).Select(CureAdvices.NoHelp)];
        if (scant.Length > 0)
        {
            page.Text($"Lets it arrive, but leaves less than {Units.Percent(factor - 1.0)} to spare: {string.Join("; ", scant)}.");
        }

        string[] useless = [.. cures.Where(cure => cure is { To: null, ArrivesAtTried: false }).Select(CureAdvices.NoHelp)];
        if (useless.Length > 0)
        {
            page.Text($"No help on {(useless.Length == 1 ? "its" : "their")} own: {string.Join("; ", useless)}.");
        }
    }

    private static void NotTried(Page page, MoveReport report, MountAxis axis, Diagnosis diagnosis)
    {
        if (diagnosis.Why.Limit != Limit.Clutch && diagnosis.Cures.Alone.All(cure => cure.Kind != CureKind.MoreCurrent))
        {
            page.Text($"The slew current, {Units.Current(report.Setup.Axis(axis).Drive.SlewCurrentAmperes)}, is at the motor's rated current already.");
        }
    }
}
