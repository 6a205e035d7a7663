using AxisSim.Cli.Input;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Balance;

/// <summary>The page of a balance: how much, how bad that is, what to shift, what remains, where it shows.</summary>
internal static class BalancePresenter
{
    // A longer list is for a file.
    private const int MostTyped = 2;

    /// <summary>Writes the page.</summary>
    public static void Write(Page page, string scenario, BalanceAnswer answer, IReadOnlyList<string> files)
    {
        BalanceReport report = answer.Report;
        page.Verdict(GradeText.Verdict(answer), answer.Grade <= ImbalanceGrade.Harmless);
        page.Heading("How bad that is");
        page.Rows(answer.Reached.Select(reached => (reached.Axis.Words(), answer.Graded.FirstOrDefault(graded => graded.Axis == reached.Axis) is { } graded
            ? GradeText.Row(graded)
            : $"{Units.AxisTorque(reached.Worst.NewtonMetres)}: this scenario has no [{reached.Axis.Key()}] section to hold it against")));
        if (answer.Graded.Count > 0)
        {
            page.Text(GradeText.Basis, 2);
        }

        Steps(page, scenario, answer, files);
        page.Heading("Where it shows most");
        page.Rows(answer.Reached.SelectMany(reached => Worst(reached, answer.Scenario.LatitudeRadians)));
        page.Rows([("polar axis, of which", $"{Units.AxisTorque(report.PolarFromCounterweightNewtonMetres)} that the counterweight can take away, {Units.AxisTorque(report.PolarFromTubeNewtonMetres)} from a tube out of balance, which changes with declination")]);
        page.Heading("About the polar axis, N m, by mechanical angles, in degrees: declination axis (columns), polar axis (rows)");
        Grid(page, report, pose => pose.PolarNewtonMetres);
        page.Heading("About the declination axis, N m, likewise");
        Grid(page, report, pose => pose.DeclinationNewtonMetres);
        page.Text("Positive turns the axis towards greater angles. Polar 0 has the bar level with the telescope west; -90 has the counterweight lowest. Declination axis 0 points the tube at the equator, 90 at the pole.");
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

    private static void Steps(Page page, string scenario, BalanceAnswer answer, IReadOnlyList<string> files)
    {
        BalanceTried tried = answer.Tried;
        page.Heading(answer.Grade == ImbalanceGrade.CannotBeFelt ? "What to do: nothing. To the last millimetre it would be" : "What to do");
        int item = 0;
        foreach (ShiftStep step in tried.Steps)
        {
            page.Item(Say.Count(++item) + ".", step.Sentence);
            if (step.Settings.Count is > 0 and <= MostTyped)
            {
                page.Copyable(string.Join(' ', step.Settings.Select(CommandText.Set)), indent: 5);
            }
        }

        page.Text($"Then there remain {Units.AxisTorque(tried.RemainingPolarNewtonMetres)} about the polar axis and {Units.AxisTorque(tried.RemainingDeclinationNewtonMetres)} about the declination axis. " +
            $"The inertia about the polar axis goes from {Units.Inertia(answer.Report.PolarInertiaKilogramSquareMetres.Before)} to {Units.Inertia(answer.Report.PolarInertiaKilogramSquareMetres.After)}.");
        if (tried.Together is { } line)
        {
            page.Text($"{CarryText.First(CarryText.Balanced, files)}With all of it, run as typed, {line.Promise}:");
            page.Copyable(CarryText.Command("simulate", scenario, CarryText.Balanced, files), indent: 2);
        }

        if (tried.Withheld)
        {
            page.Text("Settings are left out where, run as typed with that step alone, the move of the file does not arrive and settle: axissim simulate says why.");
        }
    }

    private static IEnumerable<(string Name, string Value)> Worst(ReachedImbalance reached, double latitude)
    {
        string Where(PoseImbalance worst) => $"up to {Units.AxisTorque(worst.NewtonMetres)} at {SkyText.Of(worst.Pose, latitude)} {Mechanical(worst.Pose)}";
        yield return (reached.Axis.Words(), "on the move of the file " + Where(reached.OnMove));
        yield return ("", "anywhere above the horizon " + Where(reached.InSky));
    }

    private static string Mechanical(MountPose pose) =>
        $"(mechanical angles: polar {Say.With(Math.Round(Units.Degrees(pose.PolarRadians), 1), "deg", 4)}, declination axis {Say.With(Math.Round(Units.Degrees(pose.DeclinationRadians), 1), "deg", 4)})";

    private static void Grid(Page page, BalanceReport report, Func<PoseTorque, double> torque)
    {
        const double Step = 45.0;
        PoseTorque[] coarse = [.. report.Grid.Where(point => OnStep(point.Pose.PolarRadians, Step) && OnStep(point.Pose.DeclinationRadians, Step))];
        double[] columns = [.. coarse.Select(point => Math.Round(Units.Degrees(point.Pose.DeclinationRadians))).Distinct().Order()];
        page.Table(
            ["polar", .. columns.Select(column => Say.Number(column))],
            coarse.GroupBy(point => Math.Round(Units.Degrees(point.Pose.PolarRadians))).OrderBy(row => row.Key).Select(row => (IReadOnlyList<string>)
            [
                Say.Number(row.Key),
                .. row.OrderBy(point => point.Pose.DeclinationRadians).Select(point => Say.Number(Math.Round(torque(point), 2))),
            ]));
    }

    private static bool OnStep(double radians, double stepDegrees)
    {
        double steps = Units.Degrees(radians) / stepDegrees;
        return Math.Abs(steps - Math.Round(steps)) < 1e-6;
    }
}
