using AxisSim.Core.Batches;

namespace AxisSim.Core.Envelopes;

/// <summary>What ends the search for a greater rate.</summary>
public enum EnvelopeLimit
{
    /// <summary>The next greater rate fails.</summary>
    Fails,

    /// <summary>The controller's greatest pulse rate.</summary>
    PulseRate,

    /// <summary>The move is too short to reach a greater rate with this ramp.</summary>
    MoveLength,

    /// <summary>The motor has hardly any torque left at a greater speed.</summary>
    MotorSpeed,
}

/// <summary>The greatest safe slew rate with one ramp.</summary>
public sealed record SafeRate
{
    /// <summary>Ramp time, s.</summary>
    public required double RampSeconds { get; init; }

    /// <summary>The greatest rate up to which every rate that was tried arrives, rad/s; NaN when the least one that was tried fails.</summary>
    public required double RateRadiansPerSecond { get; init; }

    /// <summary>What stands against a greater rate.</summary>
    public required EnvelopeLimit Limit { get; init; }

    /// <summary>Greatest rate that the search allows, rad/s.</summary>
    public required double TopRadiansPerSecond { get; init; }

    /// <summary>What sets that rate.</summary>
    public required EnvelopeLimit TopLimit { get; init; }

    /// <summary>The least rate that was tried and fails, rad/s; NaN when all arrive.</summary>
    public double FirstFailingRadiansPerSecond { get; init; } = double.NaN;

    /// <summary>How that one ends; null when all arrive.</summary>
    public BatchEnd? Failure { get; init; }

    /// <summary>The least rate that was tried, rad/s; NaN when none could be.</summary>
    public double LeastTriedRadiansPerSecond { get; init; } = double.NaN;

    /// <summary>How many rates were tried.</summary>
    public int Tried { get; init; }

    /// <summary>Least and greatest rate above the first failure that arrive again, rad/s; null when none does. They do not count.</summary>
    public RateIsland? Island { get; init; }
}

/// <summary>Rates above a failure that arrive again, as tried: near a resonance arriving comes and goes.</summary>
/// <param name="FromRadiansPerSecond">The least, rad/s.</param>
/// <param name="ToRadiansPerSecond">The greatest, rad/s.</param>
public sealed record RateIsland(double FromRadiansPerSecond, double ToRadiansPerSecond);
