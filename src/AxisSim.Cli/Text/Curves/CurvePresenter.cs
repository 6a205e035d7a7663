using AxisSim.Core.Outcomes;
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
            page.Verdict(Verdict(report), CurveStudy.LeastMargin(report.Curves).Value > 0.0);
        }

        foreach (CurveReport report in reports)
        {
            page.Heading(Say.Sentence(report.Axis.Words()));
            page.Text(Bands(report));
            page.Text(double.IsInfinity(report.Curves.ChangeoverRadiansPerSecond)
                ? "The drive microsteps at every speed; the full-stepping columns show what it could give otherwise."
                : $"The drive full-steps above {Units.Speed(report.Curves.ChangeoverRadiansPerSecond)} ({Units.Rate(report.Curves.ChangeoverRadiansPerSecond / report.TotalReduction)} at the axis).");
            SwingText.Write(page, report);
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
        TorqueMargin margin = CurveStudy.LeastMargin(report.Curves);
        string axis = Say.Sentence(report.Axis.Words());
        if (margin.NeededNewtonMetres == 0.0)
        {
            return $"{axis}: the move needs no torque of this motor.";
        }

        string numbers = $"{Units.ShaftTorque(margin.NeededNewtonMetres)} at {Units.Speed(margin.MotorSpeedRadiansPerSecond)}, {Units.Time(margin.TimeSeconds)} after the start";
        return margin.Value > 0.0
            ? $"{axis}: at its hardest moment the move needs {numbers}, of {Units.ShaftTorque(margin.AvailableNewtonMetres)} simulated pull-out torque: {Units.Percent(margin.Value)} to spare."
            : $"{axis}: TOO LITTLE TORQUE: at its hardest moment the move needs {numbers}, but the simulated pull-out torque is {Units.ShaftTorque(margin.AvailableNewtonMetres)}.";
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
