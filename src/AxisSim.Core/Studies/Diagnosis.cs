namespace AxisSim.Core.Studies;

/// <summary>Why a move fails.</summary>
public enum FailureCause
{
    /// <summary>The supply voltage limits the current at this speed.</summary>
    SupplyVoltage,

    /// <summary>Too much inertia for the ramp.</summary>
    Inertia,

    /// <summary>Too much imbalance.</summary>
    Imbalance,

    /// <summary>Too much friction of bearings, seals and worm.</summary>
    Friction,

    /// <summary>Too much wind.</summary>
    Wind,

    /// <summary>Resonance or instability of stepping: the torque would do, but the rotor swings.</summary>
    Resonance,

    /// <summary>The clutch slips.</summary>
    Clutch,

    /// <summary>No single change of the load lets it arrive: several together are too much for the motor.</summary>
    Combined,
}

/// <summary>A re-run with one thing changed, to see whether that thing is to blame.</summary>
public enum Counterfactual
{
    /// <summary>Ten times the supply voltage.</summary>
    AmpleVoltage,

    /// <summary>No imbalance.</summary>
    WithoutImbalance,

    /// <summary>No wind.</summary>
    WithoutWind,

    /// <summary>No friction of bearings, seals and worm.</summary>
    WithoutFriction,

    /// <summary>A tenth of the inertia.</summary>
    TenthOfInertia,

    /// <summary>Microstepping throughout.</summary>
    WithoutFullStepping,

    /// <summary>A clutch that does not slip.</summary>
    RigidClutch,
}

/// <summary>Result of a counterfactual re-run.</summary>
/// <param name="Change">What was changed.</param>
/// <param name="Arrives">Whether the move then arrives.</param>
public sealed record CounterfactualResult(Counterfactual Change, bool Arrives);

/// <summary>Shaft torques at the moment of failure, N m, in the direction of motion.</summary>
/// <param name="InertiaNewtonMetres">To accelerate rotor, train and load.</param>
/// <param name="ImbalanceNewtonMetres">To lift the imbalance (negative when it helps).</param>
/// <param name="WindNewtonMetres">To stand against the wind (negative when it helps).</param>
/// <param name="FrictionNewtonMetres">Friction of bearings and seals.</param>
/// <param name="WormLossNewtonMetres">Lost in worm and stages.</param>
/// <param name="AvailableNewtonMetres">Pull-out torque at that speed and mode.</param>
public sealed record TorqueShares(
    double InertiaNewtonMetres,
    double ImbalanceNewtonMetres,
    double WindNewtonMetres,
    double FrictionNewtonMetres,
    double WormLossNewtonMetres,
    double AvailableNewtonMetres);

/// <summary>A setting whose change may cure a failure.</summary>
public enum RemedyKind
{
    /// <summary>A longer ramp.</summary>
    LongerRamp,

    /// <summary>A lower slew rate.</summary>
    LowerSlewRate,

    /// <summary>More slew current, up to the rated.</summary>
    MoreCurrent,

    /// <summary>Another changeover speed.</summary>
    Changeover,

    /// <summary>More supply voltage.</summary>
    MoreVoltage,

    /// <summary>Better balance.</summary>
    BetterBalance,

    /// <summary>A clutch that is set to slip at more.</summary>
    FirmerClutch,

    /// <summary>More damping of the rotor, up to half of critical.</summary>
    MoreDamping,
}

/// <summary>The smallest change of one kind that arrives with a load factor of 1.1, found by re-runs.</summary>
/// <param name="Kind">What to change.</param>
/// <param name="From">Present value: s, rad/s at the axis, A, motor rad/s, V, worst imbalance in N m, clutch torque in N m, or damping of the rotor as a share of critical.</param>
/// <param name="To">Suggested value in the same unit; null when no value of this kind helps.</param>
/// <param name="Tried">The furthest value tried.</param>
/// <param name="ArrivesAtTried">When no value gives the load factor asked for: whether the furthest one at least arrives.</param>
public sealed record Remedy(RemedyKind Kind, double From, double? To, double Tried, bool ArrivesAtTried = false)
{
    /// <summary>How large the change is: the logarithm of the ratio, by which remedies are ranked.</summary>
    public double Size => To is not { } to ? double.PositiveInfinity
        : to <= 0.0 || From <= 0.0 || !double.IsFinite(From) || !double.IsFinite(to) ? 1.0
        : Math.Abs(Math.Log(to / From));
}

/// <summary>Cause and cure of a move that fails.</summary>
/// <param name="Cause">Cause, by counterfactual re-runs.</param>
/// <param name="Shares">Torques at the moment of failure.</param>
/// <param name="Counterfactuals">The re-runs.</param>
/// <param name="Remedies">Remedies, the smallest change first; those that do not help come last.</param>
public sealed record Diagnosis(
    FailureCause Cause,
    TorqueShares Shares,
    IReadOnlyList<CounterfactualResult> Counterfactuals,
    IReadOnlyList<Remedy> Remedies);
