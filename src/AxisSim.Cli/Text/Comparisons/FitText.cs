using AxisSim.Core.Comparisons;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>What measured curves made of motors.</summary>
internal static class FitText
{
    private const double PoorFit = 0.9;

    /// <summary>Writes them.</summary>
    public static void Write(Page page, ComparisonReport report)
    {
        foreach (MeasuredFit fit in report.Fits)
        {
            page.Heading($"{fit.Motor}: {(fit.Kind == FitKind.Cap ? "capped by" : "fitted to")} its measured curve");
            page.Text(Sentence(fit));
            page.Table(
                ["rpm", "V", "A", "mode", "measured, mN m", "datasheet", fit.Kind != FitKind.Cap ? "fit" : "cap", "difference"],
                fit.Points.Select((point, i) => (IReadOnlyList<string>)
                [
                    Say.Number(Units.Rpm(point.SpeedRadiansPerSecond)), Say.Number(point.SupplyVolts), Say.Number(point.PhaseAmperes), point.FullStepping ? "full-step" : "microstep",
                    Torque(point.TorqueNewtonMetres), Torque(fit.DatasheetNewtonMetres[i]), Torque(fit.FittedNewtonMetres[i]), Torque(fit.FittedNewtonMetres[i] - point.TorqueNewtonMetres),
                ]));
        }
    }

    /// <summary>The fit in a sentence or two.</summary>
    public static string Sentence(MeasuredFit fit)
    {
        string torque = $"torque constant {Units.Percent(fit.TorqueScale)} of the datasheet's";
        if (fit.Kind == FitKind.Cap)
        {
            return $"Fewer than {Say.Count(PullOutFit.LeastForFit)} different speeds: nothing was fitted. {Say.Sentence(torque)}, the most with which the closed form is nowhere above a measured point."
                + (fit.AtBound ? " That is the least that is believed: check units, current and voltage of the measurement." : "");
        }

        string loss = fit.Kind == FitKind.TorqueInductanceAndLoss ? $", and {Say.With(fit.VoltageLossVolts, "V")} lost between supply and winding" : "";
        string doubt = fit.AtBound ? " A factor ended at the bound of what is believed of a datasheet: check units, current and voltage of the measurement."
            : fit.RSquared < PoorFit ? " A poor fit: the curve may have a dip at a resonance, or its conditions are not those stated." : "";
        return $"Least squares: {torque}, inductance {Units.Percent(fit.InductanceScale)}{loss}. Residual {Say.With(fit.RmsNewtonMetres * 1000.0, "mN m")} rms, R2 {Say.Number(fit.RSquared, 4)}.{doubt}";
    }

    // A hundredth of a millinewton metre is below anything a test stand shows.
    private static string Torque(double newtonMetres) => Say.Number(Math.Round(newtonMetres * 1000.0, 2));
}
