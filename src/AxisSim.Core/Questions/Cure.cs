namespace AxisSim.Core.Questions;

/// <summary>A setting whose change may cure a failure.</summary>
public enum CureKind
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

    /// <summary>More damping of the rotor.</summary>
    MoreDamping,

    /// <summary>A clutch that is set to slip at more.</summary>
    FirmerClutch,
}

/// <summary>The smallest change of one kind that arrives with the load factor asked for, found by re-runs.</summary>
/// <param name="Kind">What to change.</param>
/// <param name="From">Present value: s, rad/s at the axis, A, motor rad/s, V, worst imbalance in N m, damping as a share of critical, or clutch torque in N m.</param>
/// <param name="To">Suggested value in the same unit; null when no value of this kind helps.</param>
/// <param name="Tried">The furthest value tried.</param>
/// <param name="ArrivesAtTried">When no value gives the load factor asked for: whether the furthest one at least arrives as the mount is.</param>
public sealed record Cure(CureKind Kind, double From, double? To, double Tried, bool ArrivesAtTried = false)
{
    /// <summary>Load factor asked of a cure of a failure.</summary>
    public const double AskedLoadFactor = 1.1;

    /// <summary>How large the change is: the logarithm of the ratio, by which cures are ranked.</summary>
    public double Size => To is not { } to ? double.PositiveInfinity
        : to <= 0.0 || From <= 0.0 || !double.IsFinite(From) || !double.IsFinite(to) ? 1.0
        : Math.Abs(Math.Log(to / From));
}

/// <summary>Two changes that together cure what neither does alone.</summary>
/// <param name="First">One of them, with the value to set.</param>
/// <param name="Second">The other, likewise.</param>
public sealed record CurePair(Cure First, Cure Second)
{
    /// <summary>How large both changes are together.</summary>
    public double Size => First.Size + Second.Size;
}

/// <summary>What would cure a failing move.</summary>
/// <param name="Alone">Each kind of change with what came of it, the smallest that cures first; those that do not help come last.</param>
/// <param name="Pairs">Pairs of changes that cure, the smallest first; looked for only where no single change does.</param>
public sealed record Cures(IReadOnlyList<Cure> Alone, IReadOnlyList<CurePair> Pairs)
{
    /// <summary>The single changes that cure, the smallest first.</summary>
    public IEnumerable<Cure> Helping => Alone.Where(cure => cure.To is not null);
}
