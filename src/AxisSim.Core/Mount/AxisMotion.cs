namespace AxisSim.Core.Mount;

/// <summary>Shape of a ramp.</summary>
public enum RampShape
{
    /// <summary>Constant acceleration.</summary>
    Trapezoid,

    /// <summary>Jerk-limited.</summary>
    SCurve,
}

/// <summary>How one axis is commanded to move: slew rate, ramp and shape, all at the axis.</summary>
public sealed record AxisMotion
{
    /// <summary>Greatest rate, rad/s.</summary>
    public required double SlewRateRadiansPerSecond { get; init; }

    /// <summary>The ramp from the start rate to the slew rate, and back.</summary>
    public required Ramp Ramp { get; init; }

    /// <summary>Shape of the ramp.</summary>
    public RampShape Shape { get; init; } = RampShape.Trapezoid;

    /// <summary>For an S-curve: share of the ramp time over which the acceleration rises (and as long falls), above 0 to 0.5.</summary>
    public double JerkShare { get; init; } = 0.25;

    /// <summary>Rate at which the drive starts and stops without a ramp, rad/s.</summary>
    public double StartRateRadiansPerSecond { get; init; }

    /// <summary>Greatest acceleration in use, rad/s2: as given, or the one that the ramp time asks for.</summary>
    public double PeakAcceleration => Ramp.Seconds is { } seconds ? RateGain / (seconds * (1.0 - RisingShare)) : Ramp.RadiansPerSecondSquared!.Value;

    /// <summary>Ramp time in use, s: as given, or the one that the acceleration asks for.</summary>
    public double RampInUseSeconds => Ramp.Seconds ?? RateGain / (PeakAcceleration * (1.0 - RisingShare));

    /// <summary>What a move of a distance takes at least, s: its distance at the slew rate, or with <see cref="PeakAcceleration"/> until half-way and back.</summary>
    /// <param name="distanceRadians">Distance without its sign, rad.</param>
    /// <remarks>
    /// <c>max(x/v, 2 (sqrt(v0^2 + a x) - v0)/a)</c>; x distance (rad), v slew rate and v0 start rate (rad/s), a acceleration (rad/s2). Infinite where an acceleration is
    /// too small for the numbers of a computer. A plan takes longer by less than two ramps.
    /// </remarks>
    public double LeastSeconds(double distanceRadians)
    {
        if (distanceRadians == 0.0)
        {
            return 0.0;
        }

        double acceleration = PeakAcceleration, low = Math.Min(StartRateRadiansPerSecond, SlewRateRadiansPerSecond);
        double ramps = low < SlewRateRadiansPerSecond && double.IsFinite(acceleration) ? 2.0 * (Math.Sqrt((low * low) + (acceleration * distanceRadians)) - low) / acceleration : 0.0;
        return Math.Max(distanceRadians / SlewRateRadiansPerSecond, double.IsNaN(ramps) ? double.PositiveInfinity : ramps);
    }

    private double RateGain => Math.Max(0.0, SlewRateRadiansPerSecond - StartRateRadiansPerSecond);

    private double RisingShare => Shape == RampShape.SCurve ? JerkShare : 0.0;
}

/// <summary>What follows the move.</summary>
public enum FollowUp
{
    /// <summary>The axes rest.</summary>
    Rest,

    /// <summary>The polar axis tracks at the sidereal rate, before, during and after the slew.</summary>
    Sidereal,
}
