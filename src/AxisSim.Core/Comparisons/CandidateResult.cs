using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Comparisons;

/// <summary>What became of a candidate, the best first.</summary>
public enum CandidateFate
{
    /// <summary>It takes part in the ranking.</summary>
    Ranked,

    /// <summary>Not simulated: even by the optimistic closed form another setting of the same motor is faster.</summary>
    Slower,

    /// <summary>It arrives but does not settle in the time observed.</summary>
    NotSettled,

    /// <summary>Slewing, tracking or holding without end heats the winding beyond its insulation class.</summary>
    TooHot,

    /// <summary>No rate that was tried is safe at the load asked for.</summary>
    NoSafeRate,

    /// <summary>Not simulated: even the optimistic closed form gives no useful rate.</summary>
    Hopeless,
}

/// <summary>A candidate on one axis.</summary>
public sealed record CandidateAxis
{
    /// <summary>The axis.</summary>
    public required MountAxis Axis { get; init; }

    /// <summary>Greatest rate that the closed form allows for, with an allowance in its favour, rad/s; NaN when not even the least one.</summary>
    public required double BoundRadiansPerSecond { get; init; }

    /// <summary>What stands against a greater rate.</summary>
    public required Limit Limit { get; init; }

    /// <summary>The search at the load asked for; null when it was not simulated.</summary>
    public GreatestRate? Search { get; init; }

    /// <summary>The slew rate in use, rad/s: the greatest safe one, or a lower one at which the move settles; NaN when there is none.</summary>
    public double RateRadiansPerSecond { get; init; } = double.NaN;

    /// <summary>Planned duration of the slew of this axis alone, s; NaN when there is no safe rate.</summary>
    public double OwnSlewSeconds { get; init; } = double.NaN;

    /// <summary>Time from the end of the axis' own slew until the payload stays within the tolerance of its rest, s; NaN when it does not.</summary>
    public double SettleSeconds { get; init; } = double.NaN;

    /// <summary>The hottest winding temperature after slewing, tracking or holding without end, degrees Celsius.</summary>
    public double ContinuousCelsius { get; init; } = double.NaN;

    /// <summary>Which of them that is.</summary>
    public ContinuousDuty Duty { get; init; }

    /// <summary>Limit of the insulation class, degrees Celsius.</summary>
    public required double LimitCelsius { get; init; }

    /// <summary>Mean power from the supply over the slew, W.</summary>
    public double MeanWatts { get; init; } = double.NaN;

    /// <summary>Facts at the safe rate (where there is none, at the rate of the mount).</summary>
    public required DerivedFacts Facts { get; init; }

    /// <summary>Inertia of the load at the motor's shaft over that of the rotor.</summary>
    public required double InertiaRatio { get; init; }
}

/// <summary>What came of one candidate.</summary>
public sealed record CandidateResult
{
    /// <summary>The candidate.</summary>
    public required Candidate Candidate { get; init; }

    /// <summary>The mount with it, at its safe rates where there are any.</summary>
    public required MountSetup Setup { get; init; }

    /// <summary>Its place in the order of the candidates as given, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>What became of it.</summary>
    public required CandidateFate Fate { get; init; }

    /// <summary>Whether the rates are below the greatest safe ones, because at those it does not settle.</summary>
    public bool SlowedToSettle { get; init; }

    /// <summary>Axis by axis.</summary>
    public required IReadOnlyList<CandidateAxis> Axes { get; init; }

    /// <summary>Planned duration of the slew at the rates in use, s, that of the slower of the axes compared; where it was not simulated a time that it cannot beat; NaN when there is none.</summary>
    public double SlewSeconds { get; init; } = double.NaN;

    /// <summary>Time from the end of the slew of the slower axis until all are settled, s; NaN when one does not settle or was not simulated.</summary>
    public double SettleSeconds => OnTargetSeconds - SlewSeconds;

    /// <summary>Time from the start of the move until all axes are settled, s; NaN when one does not settle or was not simulated.</summary>
    public double OnTargetSeconds => Axes.Any(axis => double.IsNaN(axis.SettleSeconds)) ? double.NaN : Axes.Max(axis => axis.OwnSlewSeconds + axis.SettleSeconds);

    /// <summary>Mean power of all axes together over the slew, W.</summary>
    public double MeanWatts => Axes.Sum(axis => axis.MeanWatts);

    /// <summary>The axis that holds the others up: one without a safe rate, else the one that slews longest.</summary>
    public CandidateAxis Worst => Axes.OrderByDescending(axis => double.IsNaN(axis.OwnSlewSeconds) ? double.PositiveInfinity : axis.OwnSlewSeconds).ThenBy(axis => axis.Search is { } search && double.IsNaN(search.RateRadiansPerSecond) ? 0 : 1).First();
}
