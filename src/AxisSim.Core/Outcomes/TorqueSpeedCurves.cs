namespace AxisSim.Core.Outcomes;

/// <summary>A supply voltage at which a curve is drawn.</summary>
public enum SupplyLevel
{
    /// <summary>Nominal voltage less 10 %.</summary>
    Low,

    /// <summary>Nominal voltage.</summary>
    Nominal,

    /// <summary>Nominal voltage plus 10 %.</summary>
    High,
}

/// <summary>Pull-out torque against motor speed for one mode and one supply voltage.</summary>
/// <param name="FullStepping">Full-stepping, or microstepping.</param>
/// <param name="Supply">Which supply voltage.</param>
/// <param name="SupplyVolts">Its value, V.</param>
/// <param name="ClosedFormNewtonMetres">Closed form (the lesser of what current and voltage allow), N m, one per speed.</param>
/// <param name="SimulatedNewtonMetres">Simulated, N m, one per speed; NaN where it was not simulated.</param>
public sealed record PullOutCurve(
    bool FullStepping,
    SupplyLevel Supply,
    double SupplyVolts,
    IReadOnlyList<double> ClosedFormNewtonMetres,
    IReadOnlyList<double> SimulatedNewtonMetres);

/// <summary>A range of motor speeds, rad/s.</summary>
/// <param name="FromRadiansPerSecond">Lower end.</param>
/// <param name="ToRadiansPerSecond">Upper end.</param>
public sealed record SpeedBand(double FromRadiansPerSecond, double ToRadiansPerSecond);

/// <summary>A point of the torque-speed plane that the planned move passes through.</summary>
/// <param name="TimeSeconds">Time, s.</param>
/// <param name="SpeedRadiansPerSecond">Motor speed, rad/s (absolute).</param>
/// <param name="TorqueNewtonMetres">Shaft torque needed in the direction of motion, N m (negative when braking).</param>
public sealed record NeedPoint(double TimeSeconds, double SpeedRadiansPerSecond, double TorqueNewtonMetres);

/// <summary>The torque-speed plane of one axis' motor with the path of its move.</summary>
public sealed record TorqueSpeedCurves
{
    /// <summary>Motor speeds, rad/s, ascending.</summary>
    public required IReadOnlyList<double> SpeedsRadiansPerSecond { get; init; }

    /// <summary>One curve per mode and supply.</summary>
    public required IReadOnlyList<PullOutCurve> Curves { get; init; }

    /// <summary>Speeds where full-stepping is unstable at nominal supply.</summary>
    public required IReadOnlyList<SpeedBand> UnstableBands { get; init; }

    /// <summary>Path of the planned move.</summary>
    public required IReadOnlyList<NeedPoint> Path { get; init; }

    /// <summary>Changeover speed of the drive, rad/s; infinite when it always microsteps.</summary>
    public required double ChangeoverRadiansPerSecond { get; init; }
}
