namespace AxisSim.Core.Outcomes;

/// <summary>What is watched in every step of a run of one axis.</summary>
/// <remarks>SI units; angles and speeds at the axis unless the name says motor. Currents are instantaneous phase currents. Values are those at the end of the step, except for means over the step, which say so.</remarks>
public enum TraceQuantity
{
    /// <summary>Planned axis angle, rad.</summary>
    PlannedAngleRadians,

    /// <summary>Planned axis rate, mean over the step, rad/s.</summary>
    PlannedRateRadiansPerSecond,

    /// <summary>Actual axis rate, rad/s.</summary>
    ActualRateRadiansPerSecond,

    /// <summary>Motor shaft speed, rad/s.</summary>
    MotorSpeedRadiansPerSecond,

    /// <summary>Axis angle less planned angle, rad.</summary>
    AxisErrorRadians,

    /// <summary>Payload angle less planned angle, rad; equals the axis error when the payload is rigid.</summary>
    PayloadErrorRadians,

    /// <summary>Payload angle less planned angle and periodic error, rad: what settling is judged by (a slow periodic error is not a swing).</summary>
    SettleErrorRadians,

    /// <summary>Load angle of the motor (rotor less command), electrical rad; a full turn is four lost full steps.</summary>
    LoadAngleRadians,

    /// <summary>Motor torque, mean over the step, N m.</summary>
    MotorTorqueNewtonMetres,

    /// <summary>Current of phase A, A.</summary>
    PhaseACurrentAmperes,

    /// <summary>Current of phase B, A.</summary>
    PhaseBCurrentAmperes,

    /// <summary>Amplitude of the phase currents, sqrt(A^2 + B^2), A.</summary>
    CurrentAmplitudeAmperes,

    /// <summary>Whether a phase met the supply voltage in the step (1) or not (0).</summary>
    Saturated,

    /// <summary>Bus voltage, V.</summary>
    BusVolts,

    /// <summary>Current drawn from the supply, mean over the step, A.</summary>
    SupplyCurrentAmperes,

    /// <summary>Winding temperature, degrees Celsius.</summary>
    WindingCelsius,

    /// <summary>Torque in the worm mesh seen at the axis, in the middle of the step, N m.</summary>
    MeshTorqueNewtonMetres,

    /// <summary>Clutch slip, rad.</summary>
    ClutchSlipRadians,

    /// <summary>Whether the drive full-steps (1) or microsteps (0).</summary>
    FullStepping,

    /// <summary>Shaft torque that the planned motion needs (quasi-static), N m.</summary>
    NeededTorqueNewtonMetres,

    /// <summary>Pull-out torque at the planned speed, mode and supply, N m.</summary>
    AvailableTorqueNewtonMetres,

    /// <summary>Load angle below which the field pulls the rotor back no more under the load of the planned motion, electrical rad (<see cref="RotorSwing"/>).</summary>
    HeldFromRadians,

    /// <summary>Load angle above which it pulls it back no more, electrical rad.</summary>
    HeldToRadians,
}

/// <summary>The quantities as numbers in a row.</summary>
internal static class TraceQuantities
{
    /// <summary>How many there are.</summary>
    public const int Count = (int)TraceQuantity.HeldToRadians + 1;
}
