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
            page.Verdict(Verdict(report), CurveStudy.LeastMargin(report.Curves) is { Value: > TorqueMargin.Undecided, Decides: true });
        }

        foreach (CurveReport report in reports)
        {
            page.Heading(Say.Sentence(report.Axis.Words()));
            foreach (string band in Bands(report))
            {
                page.Text(band);
            }

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
        page.Text("\"formula\" is the closed form: what current, supply voltage and the lag of the current regulator allow in smooth running. \"simulated\" is the steady load on the axis, as torque at the shaft, at which the whole axis loses step; two values: below the first it keeps step, above the second it does not, between them it may. A dash: not simulated. --out DIR writes every speed as CSV, and the figure.");
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
        if (margin.Band is { } band)
        {
            return $"{axis}: IT MAY LOSE STEP OR NOT: between {Say.Number(Units.Rpm(band.FromRadiansPerSecond))} and {Units.Speed(band.ToRadiansPerSecond)} the motor may lose step {(band.LeastNewtonMetres > 0.0 ? $"already at {Units.ShaftTorque(band.LeastNewtonMetres)}" : "even without a load")}. At its hardest moment the move needs {numbers}, of {Units.ShaftTorque(margin.AvailableNewtonMetres)} that are sure.";
        }

        if (margin.ShakesAtRate)
        {
            return $"{axis}: IT MAY LOSE STEP OR NOT: at the slew rate the axis is shaken near one of its resonances (by the periodic error, as a rule), and the swing decides; axissim simulate tells. At its hardest moment the move needs {numbers}, of {Units.ShaftTorque(margin.AvailableNewtonMetres)}.";
        }

        if (Math.Abs(margin.Value) <= TorqueMargin.Undecided)
        {
            return $"{axis}: ON THE EDGE: at its hardest moment the move needs {numbers}, of {Units.ShaftTorque(margin.AvailableNewtonMetres)} simulated pull-out torque. So near the edge the simulation of the move decides: axissim simulate.";
        }

        return margin.Value > 0.0
            ? $"{axis}: at its hardest moment the move needs {numbers}, of {Units.ShaftTorque(margin.AvailableNewtonMetres)} simulated pull-out torque: {Units.Percent(margin.Value)} to spare."
            : $"{axis}: TOO LITTLE TORQUE: at its hardest moment the move needs {numbers}, but the simulated pull-out torque is {Units.ShaftTorque(margin.AvailableNewtonMetres)}.";
    }

    private static IEnumerable<string> Bands(CurveReport report)
    {
        double changeover = report.Curves.ChangeoverRadiansPerSecond;
        PullOutBand[] met = [.. report.Curves.Bands.Where(band => band.IsMet(changeover))];
        if (met.Length == 0)
        {
            yield return "At every speed, in the mode that the drive uses there, the motor loses step at one definite load.";
        }

        foreach (PullOutBand band in met)
        {
            string speeds = $"between {Say.Number(Units.Rpm(band.FromRadiansPerSecond))} and {Units.Speed(band.ToRadiansPerSecond)} ({Say.Number(Units.Degrees(band.FromRadiansPerSecond / report.TotalReduction))} to {Units.Rate(band.ToRadiansPerSecond / report.TotalReduction)} at the axis)";
            string mode = band.FullStepping ? "Full-stepping" : "Microstepping";
            yield return !band.IsNothingSure
                ? $"{mode} {speeds} the motor may lose step already at {Units.ShaftTorque(band.LeastNewtonMetres)}, or hold up to {Units.ShaftTorque(band.GreatestNewtonMetres)}: it depends on how the rotor swings when it comes there."
                : $"{mode} {speeds} the rotor may swing itself out of step even without a load, though it may hold {Units.ShaftTorque(band.GreatestNewtonMetres)}. Pass through quickly, or use the other mode there; do not slew at such a speed.";
        }

        foreach (bool full in new[] { false, true })
        {
            string[] speeds = [.. report.Curves.Bands
                .Where(band => band.FullStepping == full && band.IsNothingSure && !band.IsMet(changeover))
                .Select(band => $"{Say.Number(Units.Rpm(band.FromRadiansPerSecond))} to {Units.Speed(band.ToRadiansPerSecond)}")];
            if (speeds.Length > 0)
            {
                yield return $"Not met with this changeover: {(full ? "full-stepping" : "microstepping")} at {string.Join(", ", speeds)} the rotor may swing itself out of step even without a load.";
            }
        }
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
                Cell(micro?.ClosedFormNewtonMetres, i), Range(micro, i),
                Cell(full?.ClosedFormNewtonMetres, i), Range(full, i),
            ]));
    }

    private static string Cell(IReadOnlyList<double>? values, int i) =>
        values is null || !double.IsFinite(values[i]) ? "-" : Say.Number(values[i] * 1000.0);

    private static string Range(PullOutCurve? curve, int i) =>
        curve is not null && double.IsFinite(curve.LeastNewtonMetres[i]) && curve.At(i).IsBand
            ? $"{Say.Number(curve.LeastNewtonMetres[i] * 1000.0)} to {Say.Number(curve.GreatestNewtonMetres[i] * 1000.0)}"
            : Cell(curve?.LeastNewtonMetres, i);

    private static IEnumerable<int> Rows(int count) => count <= TableRows
        ? Enumerable.Range(0, count)
        : Enumerable.Range(0, TableRows).Select(i => (int)Math.Round((double)i * (count - 1) / (TableRows - 1)));
}
