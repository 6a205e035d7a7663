using System.Globalization;
using AxisSim.Core.Outcomes;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>Makes the content of a settings sheet from what was simulated.</summary>
internal static class SheetBuilder
{
    /// <summary>The sheet.</summary>
    public static SettingsSheet Of(SheetInput input)
    {
        string[] names = [.. input.Axes.Select(axis => Say.Sentence(axis.Result.Outcome.Axis.Words()))];
        return new SettingsSheet
        {
            Title = $"Settings sheet: {input.Name}{(input.Site.Length > 0 ? ", " + input.Site : "")}",
            Warning = Warning([.. input.Axes.Select(axis => axis.Result.Outcome.Verdict)]) ?? TypedRows.Warning(input.Typed) ?? Slower(input),
            Verdict = input.Verdict,
            Axes = names,
            Typed = input.Typed is { } typed ? TypedRows.Of(typed, names) : null,
            Settings = SettingRows.Of(input.Axes),
            Notes = SettingRows.Notes(input.Axes, names),
            Checks = CheckText.Of(input, names),
            Steps = StepText.Of(input),
            Caution = "A moving mount can pinch, and can drop its telescope. Motors and supplies can burn; wiring can shock and start fires. Makers' manuals, local codes and licensed practice come before this sheet. "
                + "It is a prediction: friction is seldom known to better than 30 %, and what is measured counts.",
            Provenance = Provenance(input),
        };
    }

    private static string? Warning(IReadOnlyList<MoveEnd> verdicts) =>
        verdicts.Contains(MoveEnd.Stalls) ? "DO NOT ENTER THESE: the move stalls."
        : verdicts.Contains(MoveEnd.ClutchSlips) ? "DO NOT ENTER THESE: the clutch slips."
        : verdicts.Contains(MoveEnd.DoesNotSettle) ? "DO NOT ENTER THESE: the move does not settle."
        : null;

    // A slower move may meet a resonance that the full rate passes by.
    private static string? Slower(SheetInput input)
    {
        string[] titles = [.. StepText.Failing(input)];
        return titles.Length > 0 ? $"CAREFUL: the full slew rate arrives, but this is predicted to fail: {string.Join(", ", titles)}. Leave it out." : null;
    }

    private static string Provenance(SheetInput input)
    {
        string settings = input.Settings.Count > 0 ? $", with {string.Join(", ", input.Settings)}" : "";
        return $"{input.Program}, {input.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}. Scenario \"{input.Name}\"{settings}. SHA-256 {input.Sha256}";
    }
}
