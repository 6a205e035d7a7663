using AxisSim.Cli.Input;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Balance;

/// <summary>The page of a balance: how much, where it shows, what to shift, what remains.</summary>
internal static class BalancePresenter
{
    // Friction of a small axis hides less than this, N m: no hand can balance finer.
    private const double GoodNewtonMetres = 0.05;

    // A longer list is for a file.
    private const int MostTyped = 2;

    /// <summary>Writes the page.</summary>
    public static void Write(Page page, string scenario, PayloadModel payload, double latitude, BalanceReport report, BalanceTried tried, IReadOnlyList<string> files)
    {
        bool good = report.Polar.NewtonMetres < GoodNewtonMetres && report.Declination.NewtonMetres < GoodNewtonMetres;
        page.Verdict(good
            ? "BALANCED: about both axes within what a hand can set."
            : $"OUT OF BALANCE: by up to {Units.AxisTorque(report.Polar.NewtonMetres)} about the polar axis and {Units.AxisTorque(report.Declination.NewtonMetres)} about the declination axis.", good);

        page.Heading("What to do");
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
            $"The inertia about the polar axis goes from {Units.Inertia(report.PolarInertiaKilogramSquareMetres.Before)} to {Units.Inertia(report.PolarInertiaKilogramSquareMetres.After)}.");
        if (tried.Together is { } line)
        {
            page.Text($"{CarryText.First(CarryText.Balanced, files)}With all of it, run as typed, {line.Promise}:");
            page.Copyable(CarryText.Command("simulate", scenario, CarryText.Balanced, files), indent: 2);
        }

        if (tried.Withheld)
        {
            page.Text("Settings are left out where, run as typed with that step alone, the move of the file does not arrive and settle: axissim simulate says why.");
        }

        page.Heading("Where it shows most");
        page.Rows(
        [
            ("polar axis", Worst(payload, report.Polar, latitude)),
            ("of which", $"{Units.AxisTorque(report.PolarFromCounterweightNewtonMetres)} that the counterweight can take away, {Units.AxisTorque(report.PolarFromTubeNewtonMetres)} from a tube out of balance, which changes with declination"),
            ("declination axis", Worst(payload, report.Declination, latitude)),
        ]);
        page.Text("Half a turn of that axis on, the torque is as large the other way.", 2);

        page.Heading("About the polar axis, N m, by declination (columns) and polar angle (rows), in degrees");
        Grid(page, report, pose => pose.PolarNewtonMetres);
        page.Heading("About the declination axis, N m, likewise");
        Grid(page, report, pose => pose.DeclinationNewtonMetres);
        page.Text("Positive turns the axis towards greater angles. Polar 0 has the bar level with the telescope west; -90 has the counterweight lowest. Declination 0 points the tube at the equator, 90 at the pole.");
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

    // A pose that looks into the ground is no use to one who wants to feel the imbalance by hand.
    private static string Worst(PayloadModel payload, WorstImbalance worst, double latitude)
    {
        if (SkyWorst.Up(worst.Pose, latitude) || worst.NewtonMetres < GoodNewtonMetres)
        {
            return $"{Units.AxisTorque(worst.NewtonMetres)} at {Pose(worst.Pose, latitude)}";
        }

        SkyWorst sky = SkyWorst.Find(payload, latitude, worst.Axis);
        string most = Units.AxisTorque(worst.NewtonMetres), above = Units.AxisTorque(sky.NewtonMetres);
        return (most == above ? most : $"{most} with the telescope pointing below the horizon; above it up to {above},") + $" at {Pose(sky.Pose, latitude)}";
    }

    private static string Pose(MountPose pose, double latitude)
    {
        SkyPoint sky = SkyPose.ToSky(pose, latitude);
        double hours = sky.HourAngleRadians * 12.0 / Math.PI;
        string where = Math.Abs(hours) < 0.005 ? "on the meridian" : $"{Say.Number(Math.Abs(hours))} h {(hours > 0.0 ? "west" : "east")} of the meridian";
        string side = sky.Side == PierSide.West ? "west" : "east";
        return $"hour angle {Say.With(Math.Round(hours, 2), "h")} ({where}), declination {Say.With(Math.Round(Units.Degrees(sky.DeclinationRadians), 1), "deg")}, telescope {side} of the pier " +
            $"(mechanical angles: polar {Say.With(Math.Round(Units.Degrees(pose.PolarRadians), 1), "deg", 4)}, declination {Say.With(Math.Round(Units.Degrees(pose.DeclinationRadians), 1), "deg", 4)})";
    }

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
