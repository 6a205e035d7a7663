using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Why a move fails: the cause, the torques at that moment, and what re-runs with one thing changed showed.</summary>
internal static class CauseText
{
    /// <summary>The cause in a sentence.</summary>
    public static string Cause(Diagnosis diagnosis) => diagnosis.Cause switch
    {
        FailureCause.SupplyVoltage => "Cause: the supply voltage. At this speed it cannot drive enough current through the windings, so the motor has too little torque.",
        FailureCause.Inertia => "Cause: inertia. The ramp asks for more acceleration than the motor can give to this mass.",
        FailureCause.Imbalance => "Cause: imbalance. Lifting the heavy side takes more torque than the motor has to spare.",
        FailureCause.Friction => "Cause: friction. Bearings, seals, worm and stages take more torque than the motor has to spare.",
        FailureCause.Wind => "Cause: wind. Standing against it takes more torque than the motor has to spare.",
        FailureCause.Resonance => "Cause: resonance. Stepping at this speed makes the rotor swing until it falls out of step; torque alone would have been enough.",
        FailureCause.Clutch => "Cause: the clutch. The axis needs more torque than the clutch passes on." + Clutch(diagnosis.Remedies.FirstOrDefault(remedy => remedy.Kind == RemedyKind.FirmerClutch)),
        _ => "Cause: several loads together. No single one of them, taken away, lets the move arrive.",
    };

    // What the clutch must pass on is found by re-runs, as every remedy is: swings count in it, which no formula gives.
    private static string Clutch(Remedy? clutch) => clutch switch
    {
        null => "",
        { To: { } to } => $" It slips at {Units.AxisTorque(clutch.From)} about the axis, and must hold {Units.AxisTorque(to)} for the move to arrive with 10 % to spare.",
        { ArrivesAtTried: true } => $" It slips at {Units.AxisTorque(clutch.From)} about the axis; held at {Units.AxisTorque(clutch.Tried)} the move arrives, though with less than 10 % to spare.",
        _ => $" It slips at {Units.AxisTorque(clutch.From)} about the axis, but even held at {Units.AxisTorque(clutch.Tried)} the move would not arrive.",
    };

    /// <summary>The torques at the moment of failure in a sentence or two.</summary>
    public static string Shares(AxisOutcome outcome, TorqueShares shares)
    {
        double needed = shares.InertiaNewtonMetres + shares.ImbalanceNewtonMetres + shares.WindNewtonMetres + shares.FrictionNewtonMetres + shares.WormLossNewtonMetres;
        string balance = Load(shares.ImbalanceNewtonMetres, "imbalance") + (shares.WindNewtonMetres == 0.0 ? "" : ", " + Load(shares.WindNewtonMetres, "wind"));
        string when = outcome.Loss is not null ? "at that moment" : outcome.ClutchSlipSeconds is not null ? "as the clutch gives way" : "at the hardest moment";
        string text = $"Torque at the motor's shaft {when}: needed {Units.ShaftTorque(needed)}, which is " +
            $"{Units.ShaftTorque(shares.InertiaNewtonMetres)} to {(shares.InertiaNewtonMetres < 0.0 ? "slow down" : "accelerate")}, {balance}, {Units.ShaftTorque(shares.FrictionNewtonMetres)} for friction of bearings and seals, " +
            $"and {Units.ShaftTorque(shares.WormLossNewtonMetres)} lost in worm and stages. The motor can pull {Units.ShaftTorque(shares.AvailableNewtonMetres)} there before it loses step.";
        return needed < shares.AvailableNewtonMetres && outcome.Verdict == Verdict.Stalls
            ? text + $" That leaves only {Units.Percent(1.0 - (needed / shares.AvailableNewtonMetres))} for the swings of the rotor, which is not enough."
            : text;
    }

    private static string Load(double newtonMetres, string load) => newtonMetres >= 0.0
        ? $"{Units.ShaftTorque(newtonMetres)} against {load}"
        : $"{Units.ShaftTorque(-newtonMetres)} less because {load} helps";

    /// <summary>The re-runs in words: what would let it arrive, and what would not.</summary>
    public static IEnumerable<string> Counterfactuals(IReadOnlyList<CounterfactualResult> results)
    {
        string[] arrives = [.. results.Where(result => result.Arrives).Select(result => Words(result.Change))];
        string[] fails = [.. results.Where(result => !result.Arrives).Select(result => Words(result.Change))];
        if (arrives.Length > 0)
        {
            yield return $"it would arrive {Or(arrives)}";
        }

        if (fails.Length > 0)
        {
            yield return arrives.Length > 0 ? $"it would still fail {Or(fails)}" : $"it would fail even {Or(fails)}";
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

    private static string Words(Counterfactual change) => change switch
    {
        Counterfactual.AmpleVoltage => "with ten times the supply voltage",
        Counterfactual.WithoutImbalance => "without imbalance",
        Counterfactual.WithoutWind => "without wind",
        Counterfactual.WithoutFriction => "without friction and worm losses",
        Counterfactual.TenthOfInertia => "with a tenth of the inertia",
        Counterfactual.WithoutFullStepping => "if the drive microstepped throughout",
        _ => "with a clutch that cannot slip",
    };
}
