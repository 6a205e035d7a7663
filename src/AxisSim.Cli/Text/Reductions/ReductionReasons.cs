using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>Which reductions do, and why inertia has so little to say in it.</summary>
internal static class ReductionReasons
{
    /// <summary>No train reaches beyond.</summary>
    private const double GreatestWorthTelling = 1e5;

    /// <summary>Writes both parts.</summary>
    public static void Write(Page page, ReductionReport report)
    {
        string axis = Say.Sentence(report.Axis.Words());
        page.Heading($"{axis}: which reductions do for the move in the file, on paper");
        page.Rows(Window(report));
        page.Text(InWindow(report));
        page.Heading($"{axis}: why");
        page.Item("-", Match(report));
        if (report.Result.AtOptimum is { } best)
        {
            page.Item("-", Price(report.Result.Own.Facts, best));
        }

        page.Item("-", Torques(report));
        page.Item("-", Bounds(report));
    }

    private static IEnumerable<(string, string)> Window(ReductionReport report)
    {
        ReductionWindow window = report.Result.Window;
        string margin = ReductionVerdict.InHand(report), rate = Units.Rate(report.SlewRateRadiansPerSecond), band = Units.SmallAngle(report.ToleranceRadians);
        return
        [
            ("friction, imbalance", $"{From(window.LeastByLoad)} the motor carries them {margin}"),
            ("inertia", $"{From(window.LeastByInertia)} it also gives the {Acceleration(report.AccelerationRadiansPerSecondSquared)} asked for, at low speed{(window.MostByInertia < GreatestWorthTelling ? $"; above {Say.Number(window.MostByInertia)} the rotor takes too much of it" : "")}"),
            ("resolution: friction", $"{From(window.LeastByFrictionLag)} friction cannot hold the resting axis more than the settling band of {band} off its command"),
            ("resolution: microstep", $"{From(window.LeastByMicrostep)} a microstep is no more than that band"),
            ("supply voltage", $"{UpTo(window.MostBySupply)} the motor has the torque for {rate} and its ramp, {margin}"),
            ("pulse rate", double.IsFinite(window.MostByPulses) ? $"{UpTo(window.MostByPulses)} the controller can pulse {rate}" : "no limit is given"),
        ];
    }

    private static string From(double ratio) => double.IsFinite(ratio) ? $"from {Say.Number(ratio)} up" : "at no reduction";

    private static string UpTo(double ratio) => double.IsFinite(ratio) ? $"up to {Say.Number(ratio)}" : "at no reduction";

    private static string InWindow(ReductionReport report)
    {
        ReductionWindow window = report.Result.Window;
        double own = report.Result.Own.Facts.TotalReduction;
        if (!(window.Least <= window.Most))
        {
            return "No reduction meets all of these.";
        }

        string all = $"All together: {Say.Number(window.Least)} to {Say.Number(window.Most)}; your {Say.Number(own, 4)} ";
        string[] failing = [.. report.Result.Points.Where(point => point.Facts.TotalReduction >= window.Least && point.Facts.TotalReduction <= window.Most && point.OwnMove is not (null or MoveEnd.Arrives)).Select(point => Say.Number(point.Facts.TotalReduction, 4))];
        string but = failing.Length == 0 ? "" : $" But the simulated move does not arrive and settle at {Say.List(failing)}: paper knows no resonance and no swing.";
        return all + (own < window.Least ? "is below it." : own > window.Most ? "is above it." : "is within.") + but;
    }

    private static string Match(ReductionReport report)
    {
        (ReductionMatch match, ReductionFacts own) = (report.Result.Match, report.Result.Own.Facts);
        string start = $"The inertia match: {Units.Inertia(match.AxisInertiaKilogramSquareMetres)} at the axis{(match.WormShaftInertiaAtAxisKilogramSquareMetres > 0.0 ? $" (and {Units.Inertia(match.WormShaftInertiaAtAxisKilogramSquareMetres)} of the worm shaft seen there)" : "")} and {Units.Inertia(match.MotorInertiaKilogramSquareMetres)} at the motor match at sqrt(JL/Jm) = {Say.Number(match.TextbookRatio, 4)}.";
        if (report.Result.AtOptimum is not { } best)
        {
            return start + " The motor has no torque, so nothing is accelerated at any reduction.";
        }

        string counted = $"With {Units.AxisTorque(match.LoadTorqueNewtonMetres)} of friction, imbalance and wind and {Units.Percent(match.DrivingEfficiency)} efficiency of the train, and {ReductionVerdict.InHand(report)}, the acceleration is greatest at {Say.Number(match.OptimumRatio, 4)}: {Acceleration(best.AccelerationRadiansPerSecondSquared)}.";
        string here = own.AccelerationRadiansPerSecondSquared > 0.0
            ? $"At your {Say.Number(own.TotalReduction, 4)} it is {Acceleration(own.AccelerationRadiansPerSecondSquared)}, {Units.Percent(own.AccelerationRadiansPerSecondSquared / best.AccelerationRadiansPerSecondSquared)} of that; the file asks for {Acceleration(report.AccelerationRadiansPerSecondSquared)}, {Units.Percent(report.AccelerationRadiansPerSecondSquared / own.AccelerationRadiansPerSecondSquared)} of what there is."
            : $"At your {Say.Number(own.TotalReduction, 4)} there is none to spare; the file asks for {Acceleration(report.AccelerationRadiansPerSecondSquared)}.";
        return $"{start} {counted} {here}";
    }

    private static string Price(ReductionFacts own, ReductionFacts best)
    {
        string pulses = double.IsFinite(best.PulseLimitRadiansPerSecond) ? $", and the controller's pulses end at {Units.Rate(best.PulseLimitRadiansPerSecond)} instead of {Units.Rate(own.PulseLimitRadiansPerSecond)}" : "";
        return $"What the match would change, on paper: torque at the axis at rest {Times(best.TorqueAtRestNewtonMetres / own.TorqueAtRestNewtonMetres)}, to {Units.AxisTorque(best.TorqueAtRestNewtonMetres)}; a full step from {Units.SmallAngle(own.FullStepRadians)} to {Units.SmallAngle(best.FullStepRadians)}; "
            + $"the greatest rate with the ramp of the file from {RateOrNone(own.RateRadiansPerSecond)} to {RateOrNone(best.RateRadiansPerSecond)}{pulses}.";
    }

    private static string Torques(ReductionReport report)
    {
        TorqueShares shares = report.Result.Own.OwnShares;
        (string Name, double Torque)[] parts =
        [
            ("the inertia", shares.InertiaNewtonMetres), ("the imbalance", shares.ImbalanceNewtonMetres), ("wind", shares.WindNewtonMetres), ("bearings and seals", shares.BearingsNewtonMetres), ("losses of worm and stages", shares.TrainLossNewtonMetres),
        ];
        double all = parts.Sum(part => part.Torque);
        string list = Say.List([.. parts.Where(part => part.Torque != 0.0 || part.Name == "the inertia").Select(part => $"{Units.ShaftTorque(Math.Round(part.Torque, 6))} for {part.Name}")]);
        return $"Where the torque goes: at the hardest moment of the move in the file, on paper, the motor gives {Units.ShaftTorque(all)}: {list}. Inertia takes {Units.Percent(shares.InertiaNewtonMetres / all)} of it. The motor has {Units.ShaftTorque(shares.AvailableNewtonMetres)} there.";
    }

    private static string Bounds(ReductionReport report)
    {
        // Neighbours with the same answer are told together.
        var groups = new List<(Limit Bound, List<double> Ratios)>();
        foreach (ReductionPoint point in report.Result.Points)
        {
            if (groups.Count == 0 || groups[^1].Bound != point.Bound)
            {
                groups.Add((point.Bound, []));
            }

            groups[^1].Ratios.Add(point.Facts.TotalReduction);
        }

        string[] told = [.. groups.Select(group => $"{LimitWords.Noun(group.Bound)} {(group.Ratios.Count == 1 ? $"at {Say.Number(group.Ratios[0], 4)}" : $"from {Say.Number(group.Ratios[0], 4)} to {Say.Number(group.Ratios[^1], 4)}")}")];
        return $"What binds the slew rate, by simulation: {Say.List(told)}. The first rate that fails was run again with ten times the voltage, without imbalance, without friction, without loss in worm and stages, with a tenth of the inertia, with a damped rotor, and microstepped throughout; {Say.Count(report.Result.MovesRun)} moves in all.";
    }

    private static string Times(double factor) => factor >= 1.0 ? $"{Say.Number(factor, 2)} times as much" : $"{Say.Number(factor, 2)} of it";

    private static string RateOrNone(double rate) => rate > 0.0 ? Units.Rate(rate) : "none";

    private static string Acceleration(double radiansPerSecondSquared) => Say.With(Units.Degrees(radiansPerSecondSquared), "deg/s^2");
}
