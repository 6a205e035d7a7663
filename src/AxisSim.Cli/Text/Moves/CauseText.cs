using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Why a move fails: the cause, the torques at that moment, and what re-runs with one thing changed showed.</summary>
internal static class CauseText
{
    /// <summary>The cause in a sentence or two.</summary>
    public static string Cause(Diagnosis diagnosis)
    {
        LimitFinding why = diagnosis.Why;
        string start = why.Limit == Limit.Combined ? "Cause: several loads together. No single one of them, taken away, lets the move arrive." : $"Cause: {LimitWords.Noun(why.Limit)}. {Say.Sentence(LimitWords.Why(why.Limit))}.";
        return why.Limit switch
        {
            Limit.Clutch => $"Cause: the clutch. The axis needs more torque than the clutch passes on.{Clutch(diagnosis.Cures.Alone.FirstOrDefault(cure => cure.Kind == CureKind.FirmerClutch))}",
            Limit.Swings => start + Swings(why),
            _ => start,
        };
    }

    // Resonance and instability are told by what ends them.
    private static string Swings(LimitFinding why) => (why.Cures(OneChange.DampedRotor), why.Cures(OneChange.WithoutFullStepping), why.Cures(OneChange.AmpleVoltage)) switch
    {
        (true, true, _) => " It keeps step when the rotor is damped, and when the drive microsteps throughout: a resonance of full-stepping.",
        (_, true, _) => " It keeps step when the drive microsteps throughout: a resonance of full-stepping.",
        (true, _, true) => " It keeps step when the rotor is damped, and with ample voltage: the instability that sets in where the supply can no longer drive the full current.",
        (true, _, _) => " It keeps step when the rotor is damped.",
        _ => " Neither a damped rotor nor microstepping alone ends it.",
    };

    // What the clutch must pass on is found by re-runs, as every cure is: swings count in it, which no formula gives.
    private static string Clutch(Cure? clutch) => clutch switch
    {
        null => "",
        { To: { } to } => $" It slips at {Units.AxisTorque(clutch.From)} about the axis, and must hold {Units.AxisTorque(to)} for the move to arrive with 10 % to spare.",
        { ArrivesAtTried: true } => $" It slips at {Units.AxisTorque(clutch.From)} about the axis; held at {Units.AxisTorque(clutch.Tried)} the move arrives, though with less than 10 % to spare.",
        _ => $" It slips at {Units.AxisTorque(clutch.From)} about the axis, but even held at {Units.AxisTorque(clutch.Tried)} the move would not arrive.",
    };

    /// <summary>What the plan asks of the motor at its hardest moment, by cause.</summary>
    public static string Shares(TorqueShares shares)
    {
        double needed = shares.NeededNewtonMetres;
        string inertia = shares.InertiaNewtonMetres == 0.0 ? "" : $"{Units.ShaftTorque(Math.Abs(shares.InertiaNewtonMetres))} {(shares.InertiaNewtonMetres < 0.0 ? "less because it slows down" : "to accelerate")}, ";
        string balance = Load(shares.ImbalanceNewtonMetres, "imbalance") + (shares.WindNewtonMetres == 0.0 ? "" : ", " + Load(shares.WindNewtonMetres, "wind"));
        return $"Torque at the motor's shaft at the hardest moment before that ({Units.Time(shares.TimeSeconds)} after the start, {Units.Speed(shares.MotorSpeedRadiansPerSecond)}): {(needed < 0.0 ? $"the load drives the motor with {Units.ShaftTorque(-needed)}" : $"needed {Units.ShaftTorque(needed)}")}, which is " +
            $"{inertia}{balance}, {Units.ShaftTorque(shares.BearingsNewtonMetres)} for friction of bearings and seals, and {Units.ShaftTorque(shares.TrainLossNewtonMetres)} lost in worm and stages. " +
            $"By the formula the motor can pull {Units.ShaftTorque(shares.AvailableNewtonMetres)} there, {(shares.NeededShare <= 1.0 ? $"of which the plan needs {Units.Percent(shares.NeededShare)}" : "less than is needed")}; swings of axis and rotor come on top.";
    }

    private static string Load(double newtonMetres, string load) => newtonMetres >= 0.0
        ? $"{Units.ShaftTorque(newtonMetres)} against {load}"
        : $"{Units.ShaftTorque(-newtonMetres)} less because {load} helps";

    /// <summary>The re-runs in words: what would let it arrive, and what would not.</summary>
    public static IEnumerable<string> Changes(LimitFinding why)
    {
        string[] arrives = [.. why.Changes.Where(result => result.Arrives).Select(result => LimitWords.With(result.Change))];
        string[] fails = [.. why.Changes.Where(result => !result.Arrives).Select(result => LimitWords.With(result.Change))];
        if (arrives.Length > 0)
        {
            yield return $"it would arrive {Or(arrives)}";
        }

        if (fails.Length > 0)
        {
            yield return arrives.Length > 0 ? $"it would still fail {Or(fails)}" : $"it would fail even {Or(fails)}";
        }

        if (why.Pairs.Count > 0)
        {
            yield return $"two changes together would do: {Or([.. why.Pairs.Take(3).Select(pair => $"{LimitWords.With(pair.First)} and {LimitWords.With(pair.Second)}")])}";
        }
    }

    /// <summary>What the lost steps mean, or null when none were lost.</summary>
    public static string? LostSteps(AxisOutcome outcome, double direction)
    {
        if (outcome.LostFullSteps == 0)
        {
            return null;
        }

        double angle = outcome.LostFullSteps * outcome.Facts.FullStepRadians;
        string side = angle * direction < 0.0 ? "short of" : "beyond";
        return $"By the end of the plan the motor is {Say.Many(Math.Abs((long)outcome.LostFullSteps), "full step")} {(angle * direction < 0.0 ? "behind" : "ahead")}: the axis rests {Units.SmallAngle(Math.Abs(angle))} {side} where the controller believes it is. It must be aligned again.";
    }

    private static string Or(string[] words) => words.Length == 1 ? words[0] : string.Join(", ", words[..^1]) + " or " + words[^1];
}
