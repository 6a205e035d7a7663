namespace AxisSim.Core.Outcomes;

/// <summary>Samples of one axis over the whole run, one list per quantity, all of the same length.</summary>
/// <remarks>SI units; angles and speeds at the axis unless the name says motor. Currents are instantaneous phase currents.</remarks>
public sealed class Trace
{
    /// <summary>Time from the start of the move, s.</summary>
    public List<double> TimeSeconds { get; } = [];

    /// <summary>Planned axis angle, rad.</summary>
    public List<double> PlannedAngleRadians { get; } = [];

    /// <summary>Planned axis rate, rad/s.</summary>
    public List<double> PlannedRateRadiansPerSecond { get; } = [];

    /// <summary>Actual axis rate, rad/s.</summary>
    public List<double> ActualRateRadiansPerSecond { get; } = [];

    /// <summary>Motor shaft speed, rad/s.</summary>
    public List<double> MotorSpeedRadiansPerSecond { get; } = [];

    /// <summary>Axis angle less planned angle, rad.</summary>
    public List<double> AxisErrorRadians { get; } = [];

    /// <summary>Payload angle less planned angle, rad; equals the axis error when the payload is rigid.</summary>
    public List<double> PayloadErrorRadians { get; } = [];

    /// <summary>Payload angle less planned angle and periodic error, rad: what settling is judged by (a slow periodic error is not a swing).</summary>
    public List<double> SettleErrorRadians { get; } = [];

    /// <summary>Load angle of the motor (rotor less command), electrical rad; a full turn is four lost full steps.</summary>
    public List<double> LoadAngleRadians { get; } = [];

    /// <summary>Motor torque mean over the sample, N m.</summary>
    public List<double> MotorTorqueNewtonMetres { get; } = [];

    /// <summary>Shaft torque that the planned motion needs (quasi-static), N m.</summary>
    public List<double> NeededTorqueNewtonMetres { get; } = [];

    /// <summary>Pull-out torque at the planned speed, mode and supply, N m.</summary>
    public List<double> AvailableTorqueNewtonMetres { get; } = [];

    /// <summary>Current of phase A, A.</summary>
    public List<double> PhaseACurrentAmperes { get; } = [];

    /// <summary>Current of phase B, A.</summary>
    public List<double> PhaseBCurrentAmperes { get; } = [];

    /// <summary>Share of the sample's time in which a phase met the supply voltage, 0 to 1.</summary>
    public List<double> SaturationShare { get; } = [];

    /// <summary>Bus voltage, V.</summary>
    public List<double> BusVolts { get; } = [];

    /// <summary>Current drawn from the supply, mean over the sample, A.</summary>
    public List<double> SupplyCurrentAmperes { get; } = [];

    /// <summary>Winding temperature, degrees Celsius.</summary>
    public List<double> WindingCelsius { get; } = [];

    /// <summary>Torque in the worm mesh seen at the axis, N m.</summary>
    public List<double> MeshTorqueNewtonMetres { get; } = [];

    /// <summary>Clutch slip, rad.</summary>
    public List<double> ClutchSlipRadians { get; } = [];

    /// <summary>Whether the drive full-steps (1) or microsteps (0).</summary>
    public List<double> FullStepping { get; } = [];

    /// <summary>Number of samples.</summary>
    public int Count => TimeSeconds.Count;
}
