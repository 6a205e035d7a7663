using AxisSim.Cli.Input;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>What to try after a failure: the ranked remedies with the settings to copy, and those that do not help.</summary>
internal static class CureText
{
    /// <summary>Writes the part "what to try".</summary>
    public static void Write(Page page, MoveReport report, AxisOutcome outcome, Diagnosis diagnosis)
    {
        MountAxis axis = outcome.Axis;
        List<RemedyAdvice> advice =
            [.. diagnosis.Remedies.Where(remedy => remedy.To is not null).Select(remedy => RemedyText.Advice(report, axis, remedy, remedy.To!.Value))];
        page.Heading($"What to try, {axis.Words()}");
        page.Text(advice.Count switch
        {
            0 when diagnosis.Cause == FailureCause.Clutch => "No single change of those tried lets the move arrive with 10 % to spare. Combine them: a firmer clutch together with better balance, a longer ramp or a lower slew rate.",
            0 => "No single change of those tried lets the move arrive with 10 % to spare. Combine them: a longer ramp or a lower slew rate together with better balance or a higher voltage, or a stronger motor.",
            1 => "One change alone lets the move arrive with inertia, imbalance and friction 10 % above those given:",
            _ => "Any one of these lets the move arrive with inertia, imbalance and friction 10 % above those given. Each is the smallest change of its kind that does; the smallest comes first.",
        });
        for (int i = 0; i < advice.Count; i++)
        {
            page.Item(Say.Count(i + 1) + ".", advice[i].Sentence);
            if (advice[i].Settings.Count > 0)
            {
                page.Copyable(string.Join(' ', advice[i].Settings.Select(CommandText.Set)), indent: 5);
            }
        }

        string[] scant = [.. diagnosis.Remedies.Where(remedy => remedy is { To: null, ArrivesAtTried: true }).Select(RemedyText.NoHelp)];
        if (scant.Length > 0)
        {
            page.Text($"Lets it arrive, but leaves less than 10 % to spare: {string.Join("; ", scant)}.");
        }

        string[] useless = [.. diagnosis.Remedies.Where(remedy => remedy is { To: null, ArrivesAtTried: false }).Select(RemedyText.NoHelp)];
        if (useless.Length > 0)
        {
            page.Text($"No help on {(useless.Length == 1 ? "its" : "their")} own: {string.Join("; ", useless)}.");
        }

        NotTried(page, report, axis, diagnosis);
        if (advice.Count > 0 && advice[0].Settings.Count > 0)
        {
            page.Text("To see the first of them:");
            page.Copyable(CommandText.Of("simulate", report.File, report.Settings, advice[0].Settings), indent: 5);
        }
    }

    private static void NotTried(Page page, MoveReport report, MountAxis axis, Diagnosis diagnosis)
    {
        if (diagnosis.Cause != FailureCause.Clutch && diagnosis.Remedies.All(remedy => remedy.Kind != RemedyKind.MoreCurrent))
        {
            page.Text($"The slew current, {Units.Current(report.Setup.Axis(axis).Drive.SlewCurrentAmperes)}, is at the motor's rated current already.");
        }
    }
}
