using AxisSim.Cli.Input;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>The page of a recommendation: verdict, what to set, why, what would buy more, how sure.</summary>
internal static class RecommendPresenter
{
    private const int MostRows = 14;

    /// <summary>Writes the page.</summary>
    public static void Write(Page page, RecommendReport report, IReadOnlyList<string> files)
    {
        foreach (RecommendedAxis advice in report.Axes)
        {
            page.Verdict(RecommendVerdict.Of(report, advice), advice.Answer.Chosen is not null);
        }

        if (report.Together > 0)
        {
            page.Text("With both axes set so, the scenario's own move fails at some corner with the margin asked for: move one axis after the other, or ask for more margin.");
        }

        if (report.Recommended.Count > 0)
        {
            page.Heading("To see it simulated");
            page.Copyable(CommandText.Of("simulate", report.File, report.Settings, report.Recommended), indent: 2);
            foreach (RecommendedAxis advice in report.Axes.Where(advice => advice.Run is not null))
            {
                page.Text($"It says: the {advice.Answer.Axis.Words()} {RecommendVerdict.Ends(advice.Run!.Value)}.");
            }
        }

        RecommendedAxis[] untold = [.. report.Axes.Where(advice => advice.Answer.Chosen is not null && advice.Run is null)];
        if (untold.Length > 0)
        {
            page.Text($"No command is printed with the settings of the {Say.List([.. untold.Select(advice => advice.Answer.Axis.Words())])}: run as typed, with every axis of the mount, the scenario's own move does not arrive and settle with them. Their trade-off below is that of one axis moving alone.");
        }

        foreach (RecommendedAxis advice in report.Axes)
        {
            Axis(page, report, advice);
        }

        page.Heading("How it was found");
        page.Text($"{Say.Count(report.Axes.Sum(advice => advice.Answer.Runs))} simulated moves. A margin of {Units.Percent(report.Margin)} means: with inertia, imbalance and friction all {Say.Number(1.0 + report.Margin)} times as great, on top of the tolerances, every move still keeps sync and clutch. Tolerances: {ToleranceText.Ranges(report.Tolerances)}.");
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

    private static void Axis(Page page, RecommendReport report, RecommendedAxis advice)
    {
        AxisRecommendation answer = advice.Answer;
        string axis = Say.Sentence(answer.Axis.Words());
        if (answer.Chosen is { } chosen)
        {
            page.Heading($"{axis}: what to set (the file has)");
            page.Rows(Settings(chosen, advice));
            page.Gap();
            page.Text(BindingText.Of(answer, report.Aim));
            if (!report.Coarse)
            {
                page.Text(ChangeText.Best(answer) is { } best ? $"Of the changes tried, {best} would buy most." : "None of the changes tried would buy much.");
            }
        }

        if (answer.Sensitivities.Count > 0)
        {
            page.Heading($"{axis}: greatest slew rate at the margin, in deg/s, with one thing changed");
            page.Table(["change".PadRight(32), "rate", ""], ChangeText.Rows(answer));
        }

        if (answer.Front.Count > 0)
        {
            page.Heading($"{axis}: the trade-off (no point is beaten in everything; * recommended)");
            page.Table(["deg/s", "ramp, s", "A peak", "full steps above", "slew, s", "settling, s", "load factor", "degC", ""], Front(answer));
        }

        page.Heading($"{axis}: how sure");
        page.Rows(Sure(report, answer));
        if (answer.Abort is { } abort)
        {
            page.Heading($"{axis}: stops from full speed");
            page.Rows(StopText.Rows(abort));
        }

        if (answer.Chosen is not null)
        {
            foreach (string warning in WarningText.Of(advice))
            {
                page.Item("!", warning);
            }
        }
    }

    private static IEnumerable<(string, string)> Settings(FrontPoint chosen, RecommendedAxis advice)
    {
        (AxisSettings to, AxisSettings now) = (chosen.Settings, advice.Now);
        HoldingCurrents currents = advice.Answer.Currents!;
        yield return ("slew rate", $"{RecommendVerdict.Rate(to.SlewRateRadiansPerSecond)}, {Units.Sidereal(to.SlewRateRadiansPerSecond)}  ({RecommendVerdict.Rate(now.SlewRateRadiansPerSecond)})");
        yield return ("ramp", $"{Units.Time(to.RampSeconds)}, {Say.With(Units.Degrees(to.SlewRateRadiansPerSecond) / to.RampSeconds, "deg/s^2")} on average  ({Units.Time(now.RampSeconds)})");
        yield return ("slew current", $"{Units.Current(to.SlewCurrentAmperes)}  ({Say.With(now.SlewCurrentAmperes, "A")})");
        yield return ("tracking current", $"{Units.Current(to.TrackingCurrentAmperes)}  ({Say.With(now.TrackingCurrentAmperes, "A")}): {Reason(currents.TrackingReason)}; tracking needs {Units.ShaftTorque(currents.TrackingTorqueNewtonMetres)} at the motor with the margin");
        yield return ("holding current", $"{Units.Current(to.HoldingCurrentAmperes)}  ({Say.With(now.HoldingCurrentAmperes, "A")}): {Reason(currents.HoldingReason)}; {(currents.WormHolds ? "the worm holds the imbalance by itself" : $"the imbalance asks for {Units.ShaftTorque(currents.HoldingTorqueNewtonMetres)} at the motor with the margin")}");
        yield return ("changeover", $"{SettingTexts.Changeover(to.ChangeoverRadiansPerSecond)}  ({SettingTexts.Changeover(now.ChangeoverRadiansPerSecond)})");
    }

    private static string Reason(CurrentReason reason) => reason switch
    {
        CurrentReason.Torque => "set by the torque",
        CurrentReason.Resolution => "set so that the detent torque moves the axis by less than the settling tolerance",
        CurrentReason.Settling => "the lowest tried that settles well in the simulation",
        CurrentReason.Capped => "as much as the slew current allows",
        _ => $"the least taken, {Units.Percent(HoldingCurrents.LeastShare)} of the rated current",
    };

    private static IEnumerable<IReadOnlyList<string>> Front(AxisRecommendation answer)
    {
        // Evenly over the front when it is long; the recommended point is always shown.
        int count = answer.Front.Count;
        HashSet<int> shown = [.. Enumerable.Range(0, Math.Min(MostRows, count)).Select(i => count <= MostRows ? i : i * (count - 1) / (MostRows - 1))];
        return answer.Front.Where((point, i) => shown.Contains(i) || point == answer.Chosen).Select(point => (IReadOnlyList<string>)
        [
            Say.Number(Units.Degrees(point.Settings.SlewRateRadiansPerSecond), 4),
            Say.Number(point.Settings.RampSeconds),
            Say.Number(point.Settings.SlewCurrentAmperes),
            SettingTexts.Changeover(point.Settings.ChangeoverRadiansPerSecond),
            Say.Number(point.SlewSeconds),
            Say.Number(point.SettleSeconds),
            Factor(point.LoadFactor),
            Say.Number(Math.Round(point.ContinuousCelsius)),
            point == answer.Chosen ? "*" : "",
        ]);
    }

    private static string Factor(double value) => (value >= 6.0 ? "6+" : Say.Number(value)) + "";

    private static IEnumerable<(string, string)> Sure(RecommendReport report, AxisRecommendation answer)
    {
        yield return ("moves", string.Join("; ", answer.Moves.Select(Move)));
        yield return ("worst corner", $"{ToleranceText.Worst(answer.Worst)}; {ToleranceText.Strongest(answer.Worst)}");
        if (answer.Chosen is not null)
        {
            yield return ("verified", $"{Say.Count(answer.Verified.Runs)} runs of {Say.Many(answer.Verified.Moves, "move")} at {(report.Coarse ? "2 places: the worst corner and the middle" : Say.Many(answer.Verified.Corners, "corner"))}, all with the margin: none fails");
            yield return ("at random", ToleranceText.Probability(answer.Probability));
        }
    }

    private static string Move(CheckMove move)
    {
        (double from, double to, double other) = move.Axis == MountAxis.Polar
            ? (move.Start.PolarRadians, move.End.PolarRadians, move.End.DeclinationRadians)
            : (move.Start.DeclinationRadians, move.End.DeclinationRadians, move.End.PolarRadians);
        string turn = $"{Say.Number(Units.Degrees(from))} to {Say.Number(Units.Degrees(to))} deg";
        return move.Kind == CheckMoveKind.Own
            ? $"the scenario's own, {turn}"
            : $"{turn} with the {(move.Axis == MountAxis.Polar ? "declination" : "polar")} axis at {Say.Number(Units.Degrees(other))} deg ({(move.Kind == CheckMoveKind.OpposedAtStart ? "opposed at the start" : "helped at the end")})";
    }
}
