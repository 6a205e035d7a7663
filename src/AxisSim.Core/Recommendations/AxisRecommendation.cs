using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Recommendations;

/// <summary>How the verification of settings went.</summary>
/// <param name="Runs">Runs: each move at each corner that was looked at.</param>
/// <param name="Corners">Corners of the tolerances.</param>
/// <param name="Moves">Moves.</param>
/// <param name="Failures">Runs that did not arrive; 0 for a recommendation.</param>
public readonly record struct Verification(int Runs, int Corners, int Moves, int Failures);

/// <summary>What a change of the mount buys.</summary>
/// <param name="Change">The change.</param>
/// <param name="GreatestRadiansPerSecond">Greatest slew rate at the margin with it, rad/s; NaN when no rate holds.</param>
public readonly record struct Sensitivity(MountChange Change, double GreatestRadiansPerSecond);

/// <summary>A full stop from full speed, by the controller's ramp and by a power cut.</summary>
/// <param name="RampRadians">Angle that the controller's ramp takes, rad.</param>
/// <param name="RampSeconds">Time that it takes, s.</param>
/// <param name="Helping">Power cut where gravity helps the motion most, at the corner of least friction and greatest imbalance.</param>
/// <param name="Opposing">Power cut where gravity opposes the motion most, same corner.</param>
/// <param name="SelfLocking">Whether the worm locks itself at every corner.</param>
public sealed record Abort(double RampRadians, double RampSeconds, Coast Helping, Coast Opposing, bool SelfLocking);

/// <summary>What to set on one axis, and why.</summary>
public sealed record AxisRecommendation
{
    /// <summary>The axis.</summary>
    public required MountAxis Axis { get; init; }

    /// <summary>The recommended point; null when nothing holds.</summary>
    public FrontPoint? Chosen { get; init; }

    /// <summary>The nearest to holding: the settings with the greatest load factor; null where something holds.</summary>
    public FrontPoint? Nearest { get; init; }

    /// <summary>Load factor asked for.</summary>
    public required double LoadFactor { get; init; }

    /// <summary>Rates are whole multiples of this, rad/s.</summary>
    public required double ResolutionRadiansPerSecond { get; init; }

    /// <summary>Moves that stand for the sky.</summary>
    public required IReadOnlyList<CheckMove> Moves { get; init; }

    /// <summary>The cases that decided: hardest moves at their worst corners.</summary>
    public required IReadOnlyList<LoadCase> Deciding { get; init; }

    /// <summary>The worst corner.</summary>
    public required WorstCorner Worst { get; init; }

    /// <summary>Points that are not beaten in everything, and hold with the margin or with less.</summary>
    public required IReadOnlyList<FrontPoint> Front { get; init; }

    /// <summary>Verification of the recommended point.</summary>
    public Verification Verified { get; init; }

    /// <summary>Currents besides the slew current.</summary>
    public HoldingCurrents? Currents { get; init; }

    /// <summary>What ends it.</summary>
    public Binding? Binding { get; init; }

    /// <summary>What changes of the mount would buy.</summary>
    public IReadOnlyList<Sensitivity> Sensitivities { get; init; } = [];

    /// <summary>Probability of a stall.</summary>
    public StallProbability Probability { get; init; }

    /// <summary>Stops from full speed.</summary>
    public Abort? Abort { get; init; }

    /// <summary>Rates near the recommended one that do not arrive with the margin though they are lower, rad/s: a resonance is near.</summary>
    public IReadOnlyList<double> FailingBelow { get; init; } = [];

    /// <summary>Simulations run.</summary>
    public long Runs { get; init; }
}
