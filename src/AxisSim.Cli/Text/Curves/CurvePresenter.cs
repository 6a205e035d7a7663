using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Curves;

/// <summary>The page of pull-out curves: what the move needs of what there is, unstable speeds, tables.</summary>
internal static class CurvePresenter
{
    private const int TableRows = 12;

    /// <summary>Writes the page.</summary>
    public static void Write(Page page, IReadOnlyList<CurveReport> reports, IReadOnlyList<string> files)
    {
        foreach (CurveReport report in reports)
        {
            page.Verdict(Verdict(report), Hardest(report).Share < 1.0);
        }

        foreach (CurveReport report in reports)
        {
            page.Heading(Say.Sentence(report.Axis.Words()));
            page.Text(Bands(report));
            page.Text(double.IsInfinity(report.Curves.ChangeoverRadiansPerSecond)
                ? "The drive microsteps at every speed; the full-stepping columns show what it could give otherwise."
                : $"The drive full-steps above {Units.Speed(report.Curves.ChangeoverRadiansPerSecond)} ({Units.Rate(report.Curves.ChangeoverRadiansPerSecond / report.TotalReduction)} at the axis).");
            foreach (SupplyLevel level in new[] { SupplyLevel.Nominal, SupplyLevel.Low, SupplyLevel.High })
            {
                Table(page, report, level);
            }
        }

        page.Gap();
        page.Text("\"formula\" is the closed form: the lesser of what current and supply voltage allow. \"simulated\" is the load at which the motor model loses step, brought on slowly. A dash: not simulated. --out DIR writes every speed as CSV, and the figure.");
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

    /// <summary>What the move needs at its hardest moment, in a sentence.</summary>
    public static string Verdict(CurveReport report)
    {
        (NeedPoint? point, double available, double share) = Hardest(report);
        string axis = Say.Sentence(report.Axis.Words());
        if (point is null)
        {
            return $"{axis}: the move needs no torque of this motor.";
        }

        string numbers = $"{Units.ShaftTorque(point.TorqueNewtonMetres)} at {Units.Speed(point.SpeedRadiansPerSecond)}, {Units.Time(point.TimeSeconds)} after the start";
        return share < 1.0
            ? $"{axis}: at its hardest moment the move needs {numbers}, of {Units.ShaftTorque(available)} pull-out torque: {Units.Percent(1.0 - share)} to spare."
            : $"{axis}: TOO LITTLE TORQUE: at its hardest moment the move needs {numbers}, but the pull-out torque is {Units.ShaftTorque(available)}.";
    }

    private static (NeedPoint? Point, double Available, double Share) Hardest(CurveReport report)
    {
        (NeedPoint? Point, double Available, double Share) hardest = (null, 0.0, 0.0);
        foreach (NeedPoint point in report.Curves.Path.Where(point => point.TorqueNewtonMetres > 0.0))
        {
            double available = Available(report.Curves, point.SpeedRadiansPerSecond);
            double share = available > 0.0 ? point.TorqueNewtonMetres / available : double.PositiveInfinity;
            if (share > hardest.Share)
            {
                hardest = (point, available, share);
            }
        }

        return hardest;
    }

    // The closed form serves between the simulated speeds: it has no gaps and no unstable dips.
    private static double Available(TorqueSpeedCurves curves, double speed)
    {
        bool full = speed > curves.ChangeoverRadiansPerSecond;
        PullOutCurve curve = curves.Curves.First(one => one.FullStepping == full && one.Supply == SupplyLevel.Nominal);
        IReadOnlyList<double> x = curves.SpeedsRadiansPerSecond, y = curve.ClosedFormNewtonMetres;
        int after = Enumerable.Range(0, x.Count).FirstOrDefault(i => x[i] >= speed, x.Count - 1);
        if (after == 0)
        {
            return y[0];
        }

        double part = Math.Clamp((speed - x[after - 1]) / (x[after] - x[after - 1]), 0.0, 1.0);
        return ((1.0 - part) * y[after - 1]) + (part * y[after]);
    }

    private static string Bands(CurveReport report)
    {
        if (report.Curves.UnstableBands.Count == 0)
        {
            return "Full-stepping is stable at every speed looked at.";
        }

        string[] bands =
        [
            .. report.Curves.UnstableBands.Select(band =>
                $"{Say.Number(Units.Rpm(band.FromRadiansPerSecond))} to {Units.Speed(band.ToRadiansPerSecond)} ({Say.Number(Units.Degrees(band.FromRadiansPerSecond / report.TotalReduction))} to {Units.Rate(band.ToRadiansPerSecond / report.TotalReduction)} at the axis)"),
        ];
        return $"Full-stepping is unstable from {Say.List(bands)}: there the rotor swings and may lose step far below the formula. Pass through quickly or microstep there; do not slew at such a speed.";
    }

    private static void Table(Page page, CurveReport report, SupplyLevel level)
    {
        TorqueSpeedCurves curves = report.Curves;
        PullOutCurve? micro = curves.Curves.FirstOrDefault(curve => !curve.FullStepping && curve.Supply == level);
        PullOutCurve? full = curves.Curves.FirstOrDefault(curve => curve.FullStepping && curve.Supply == level);
        if ((micro ?? full) is not { } any)
        {
            return;
        }

        string name = level switch { SupplyLevel.Low => "low", SupplyLevel.High => "high", _ => "nominal" };
        page.Gap();
        page.Text($"Pull-out torque in mN m at {name} supply, {Say.With(any.SupplyVolts, "V")}:");
        page.Table(
            ["rpm, motor", "deg/s, axis", "microstep formula", "simulated", "full-step formula", "simulated"],
            Rows(curves.SpeedsRadiansPerSecond.Count).Select(i => (IReadOnlyList<string>)
            [
                Say.Number(Units.Rpm(curves.SpeedsRadiansPerSecond[i])),
                Say.Number(Units.Degrees(curves.SpeedsRadiansPerSecond[i] / report.TotalReduction)),
                Cell(micro?.ClosedFormNewtonMetres, i), Cell(micro?.SimulatedNewtonMetres, i),
                Cell(full?.ClosedFormNewtonMetres, i), Cell(full?.SimulatedNewtonMetres, i),
            ]));
    }

    private static string Cell(IReadOnlyList<double>? values, int i) =>
        values is null || !double.IsFinite(values[i]) ? "-" : Say.Number(values[i] * 1000.0);

    private static IEnumerable<int> Rows(int count) => count <= TableRows
        ? Enumerable.Range(0, count)
        : Enumerable.Range(0, TableRows).Select(i => (int)Math.Round((double)i * (count - 1) / (TableRows - 1)));
}
