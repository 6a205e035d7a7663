using AxisSim.Cli.Input;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;

namespace AxisSim.Cli.Text.Envelopes;

/// <summary>The page of an envelope: verdict, table, what limits, what it does not say.</summary>
internal static class EnvelopePresenter
{
    /// <summary>Writes the page.</summary>
    public static void Write(Page page, IReadOnlyList<EnvelopeReport> reports, IReadOnlyList<TypedLine> tries, IReadOnlyList<string> files)
    {
        foreach (EnvelopeReport report in reports)
        {
            page.Verdict(EnvelopeVerdict.Of(report), EnvelopeVerdict.Good(report));
        }

        foreach (EnvelopeReport report in reports)
        {
            page.Heading($"{Say.Sentence(report.Axis.Words())}: {EnvelopeVerdict.Greatest(report)} in deg/s{(report.Key is null ? "" : $", for {report.Key}")}");
            Table(page, report);
            page.Gap();
            Marks(page, report);
            Islands(page, report);
            page.Text(Tried(report));
        }

        page.Gap();
        Below(page, reports, tries);
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

    private static void Below(Page page, IReadOnlyList<EnvelopeReport> reports, IReadOnlyList<TypedLine> tries)
    {
        page.Text(EnvelopeVerdict.HasMargin(reports[0])
            ? $"Safe means that the simulated move keeps sync and clutch with inertia, imbalance and friction of the axis times {Say.Number(reports[0].LoadFactor)}."
            : "Arriving means that the simulated move keeps sync and clutch, no more: there is no margin in it. Stay well below, or ask for load in hand: --margin 30%.");
        foreach (TypedLine line in tries)
        {
            page.Text($"With this, run as typed, {(EnvelopeVerdict.HasMargin(reports[0]) ? line.PromiseUnder(reports[0].LoadFactor) : line.Promise)}; look at margin and heat there:");
            page.Copyable(CommandText.Of("simulate", reports[0].File, reports[0].Laid, line.Settings), indent: 2);
        }

        if (tries.Count == 0 && reports.Any(report => double.IsFinite(report.Own.RateRadiansPerSecond)))
        {
            page.Text("At none of the lower rates that were run does the whole move arrive and settle: axissim simulate says why.");
        }
    }

    private static void Table(Page page, EnvelopeReport report) => page.Table(
        ["ramp, s  ", .. report.Lines.Select(line => line.Label + "  ")],
        Enumerable.Range(0, report.Lines[0].Rates.Count).Select(row => (IReadOnlyList<string>)
        [
            Say.Number(report.Lines[0].Rates[row].RampSeconds) + (Same(report.Lines[0].Rates[row].RampSeconds, report.Own.RampSeconds) ? " *" : "  "),
            .. report.Lines.Select(line => Cell(line.Rates[row])),
        ]));

    // Why each end: without figures, for gears, microsteps and moves may differ from curve to curve.
    private static readonly (Limit Limit, string Why)[] s_ends =
    [
        (Limit.PulseRate, LimitWords.Why(Limit.PulseRate)),
        (Limit.MoveLength, LimitWords.Why(Limit.MoveLength)),
        (Limit.MotorSpeed, LimitWords.Why(Limit.MotorSpeed)),
    ];

    private static string Cell(GreatestRate rate) =>
        (rate.Tried == 0 ? "-" : double.IsNaN(rate.RateRadiansPerSecond) ? "none" : Say.Number(Units.Degrees(rate.RateRadiansPerSecond), 4)) + Mark(rate);

    // One column wide for each: the numbers stay below each other.
    private static string Mark(GreatestRate rate) => rate.Tried == 0 ? "  " : rate.Cap is { } cap ? " " + Mark(cap) : rate.Island is not null ? " i" : "  ";

    private static string Mark(Limit limit) => limit switch { Limit.PulseRate => "p", Limit.MoveLength => "m", _ => "e" };

    private static void Marks(Page page, EnvelopeReport report)
    {
        GreatestRate[] all = [.. report.Lines.SelectMany(line => line.Rates)];
        if (all.Any(rate => Same(rate.RampSeconds, report.Own.RampSeconds)))
        {
            page.Text("* the ramp of the file.");
        }

        foreach ((Limit limit, string why) in s_ends)
        {
            if (all.Any(rate => rate.Cap == limit))
            {
                page.Text($"{Mark(limit)} every rate tried arrives, and the search ends there: {why}.");
            }
        }

        if (all.Any(rate => rate.Tried > 0 && double.IsNaN(rate.RateRadiansPerSecond)))
        {
            page.Text("none: even the least rate that was tried fails.");
        }

        if (all.Any(rate => rate.Tried == 0))
        {
            page.Text("-: no rate could be tried.");
        }
    }

    private static void Islands(Page page, EnvelopeReport report)
    {
        (EnvelopeLine Line, GreatestRate Rate)[] islands = [.. report.Lines.SelectMany(line => line.Rates.Where(rate => rate.Island is not null).Select(rate => (line, rate)))];
        if (islands.Length == 0)
        {
            return;
        }

        (EnvelopeLine shown, GreatestRate at) = islands[0];
        string which = report.Lines.Count == 1 ? "" : $" and {shown.Label}";
        string range = Same(at.Island!.FromRadiansPerSecond, at.Island.ToRadiansPerSecond)
            ? $"{EnvelopeVerdict.Rate(at.Island.FromRadiansPerSecond)} arrives"
            : $"some rates from {Say.Number(Units.Degrees(at.Island.FromRadiansPerSecond), 4)} to {EnvelopeVerdict.Rate(at.Island.ToRadiansPerSecond)} arrive";
        page.Text($"i above the first failure some rates arrive again. With a ramp of {Units.Time(at.RampSeconds)}{which}, {EnvelopeVerdict.Rate(at.FirstFailingRadiansPerSecond)} {EnvelopeVerdict.Ends(at.Failure)}, but {range}: near a resonance, and at the very edge of overload, arriving comes and goes. Such rates do not count.");
    }

    private static string Tried(EnvelopeReport report)
    {
        GreatestRate[] all = [.. report.Lines.SelectMany(line => line.Rates).Where(rate => rate.Tried > 0)];
        if (all.Length == 0)
        {
            return "No rate could be tried.";
        }

        return $"{Say.Count(all.Sum(rate => (long)rate.Tried))} moves were run, at whole multiples of {EnvelopeVerdict.Rate(report.ResolutionRadiansPerSecond)}: evenly over what the search allows, step by step at the edge, and up to six times below it. A band of failure that is narrower than an eighth of the rate, or below a quarter of it, may have been stepped over.";
    }

    private static bool Same(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Abs(b);
}
