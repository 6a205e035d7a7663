using AxisSim.Core.Outcomes;
using AxisSim.Core.Reductions;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>The two tables of the lesson: how fast and strong, and how fine.</summary>
internal static class ReductionTables
{
    /// <summary>Writes both.</summary>
    public static void Write(Page page, ReductionReport report)
    {
        string axis = Say.Sentence(report.Axis.Words());
        IReadOnlyList<ReductionPoint> points = report.Result.Points;
        page.Heading($"{axis}: how fast and how strong, {ReductionVerdict.InHand(report)} for rate and acceleration");
        page.Table(
            ["reduction  ", "deg/s paper", "simulated", "what binds", "deg/s^2 paper", "simulated", "N m, rest", "at slew"],
            points.Select(point => (IReadOnlyList<string>)
            [
                Reduction(point, report),
                Positive(Units.Degrees(point.Facts.RateRadiansPerSecond)), Finite(Units.Degrees(point.SafeRateRadiansPerSecond)), LimitWords.Short(point.Bound),
                Positive(Units.Degrees(point.Facts.AccelerationRadiansPerSecondSquared)), Acceleration(point),
                Say.Number(point.Facts.TorqueAtRestNewtonMetres), Say.Number(point.TorqueAtSlewNewtonMetres),
            ]));
        page.Heading($"{axis}: how fine, and what becomes of the move in the file");
        page.Table(
            ["reduction  ", "step, arcsec", "microstep", "lag", "inertia", "kHz  ", "margin", "load factor", "settles, s"],
            points.Select(point => (IReadOnlyList<string>)
            [
                Reduction(point, report),
                Say.Number(Units.Arcseconds(point.Facts.FullStepRadians)), Say.Number(Units.Arcseconds(point.Facts.MicrostepRadians)),
                Finite(Units.Arcseconds(point.Facts.FrictionLagRadians)), Say.Number(point.Facts.InertiaRatio),
                Say.Number(point.Facts.PulsesPerSecond / 1000.0) + (point.Facts.PulsesPerSecond > report.MaximumPulseRateHertz ? " p" : "  "),
                point.OwnMargin > 0.0 ? Units.Percent(point.OwnMargin) : double.IsNaN(point.OwnMargin) ? "-" : "none",
                Factor(point), Finite(point.OwnSettleSeconds),
            ]));
        page.Gap();
        Marks(page, report);
    }

    private static string Reduction(ReductionPoint point, ReductionReport report) =>
        Say.Number(point.Facts.TotalReduction, 4) + (point == report.Result.Own ? " *" : point.Facts.LastStageRatio < 1.0 ? " u" : "  ");

    private static string Positive(double value) => value > 0.0 ? Say.Number(value) : "none";

    private static string Finite(double value) => double.IsFinite(value) ? Say.Number(value) : "none";

    private static string Acceleration(ReductionPoint point) =>
        double.IsNaN(point.SafeAccelerationRadiansPerSecondSquared) ? "none"
        : (point.AccelerationFailure is null ? "over " : "") + Say.Number(Units.Degrees(point.SafeAccelerationRadiansPerSecondSquared));

    private static string Factor(ReductionPoint point) => point switch
    {
        { OwnLoadFactor: { } factor } => (factor.AtLeast ? "over " : "") + Say.Number(factor.Value),
        { OwnMove: MoveEnd.Stalls } => "stalls",
        { OwnMove: MoveEnd.ClutchSlips } => "slips",
        { OwnMove: MoveEnd.DoesNotSettle } => "unsettled",
        _ => "-",
    };

    private static void Marks(Page page, ReductionReport report)
    {
        IReadOnlyList<ReductionPoint> points = report.Result.Points;
        page.Text($"* the reduction in the file. \"paper\" is the closed form, \"simulated\" the greatest that arrives of those tried, with every smaller one: rates with the ramp of {Units.Time(report.RampSeconds)} in the file, accelerations at {Units.Rate(report.SlewRateRadiansPerSecond)}, or less where that is too fast, and with no ramp shorter than one swing of the axis on its train (\"over\": it ended there). Torques are those at the axis, after the losses of the train.");
        page.Text("Step: a full step at the axis. Lag: how far off its command, to either side, dry friction can hold the resting axis. Inertia: axis and worm shaft seen at the motor, over the motor's own. Margin, load factor and settling are those of the move in the file.");
        if (points.Any(point => point.Facts.LastStageRatio < 1.0))
        {
            page.Text($"u below {Say.Number(report.Result.Own.Facts.TotalReduction / report.Result.Own.Facts.LastStageRatio, 4)} the stage before the worm steps up: physics allows it, and belts do too.");
        }

        if (points.Any(point => point.Facts.PulsesPerSecond > report.MaximumPulseRateHertz))
        {
            page.Text($"p more than the {Say.With(report.MaximumPulseRateHertz / 1000.0, "kHz")} that the controller can pulse: what is said of the move is what motor and drive would do with a faster one.");
        }
    }
}
