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
