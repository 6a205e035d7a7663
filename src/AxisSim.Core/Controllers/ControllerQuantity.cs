namespace AxisSim.Core.Controllers;

/// <summary>What a number typed into a controller sets.</summary>
public enum ControllerQuantity
{
    /// <summary>Slew rate at the axis, rad/s.</summary>
    SlewRate,

    /// <summary>Rate without a ramp at the axis, rad/s.</summary>
    StartRate,

    /// <summary>Ramp by its time, s.</summary>
    RampTime,

    /// <summary>Ramp by its greatest acceleration at the axis, rad/s2.</summary>
    Acceleration,

    /// <summary>Ramp by the angle that the axis turns in it, rad.</summary>
    RampDistance,

    /// <summary>Motor speed above which the drive full-steps, rad/s.</summary>
    Changeover,

    /// <summary>Phase current while slewing, A peak.</summary>
    SlewCurrent,

    /// <summary>Phase current while tracking, A peak.</summary>
    TrackingCurrent,

    /// <summary>Phase current at rest, A peak.</summary>
    HoldingCurrent,

    /// <summary>Tracking current over the slew current.</summary>
    TrackingShare,

    /// <summary>Holding current over the slew current.</summary>
    HoldingShare,

    /// <summary>Delay to the lower current, s.</summary>
    CurrentFallDelay,
}

/// <summary>On which side of what is wanted a typed number may lie.</summary>
public enum SafeSide
{
    /// <summary>At most what is wanted.</summary>
    Lower,

    /// <summary>At least what is wanted.</summary>
    Higher,

    /// <summary>At least what is wanted while that keeps to the motor's rated current; else at most.</summary>
    HigherToRated,

    /// <summary>Neither side is safer: the nearest that leaves the way in which the slew is stepped as it is.</summary>
    SameStepping,
}

/// <summary>The safe side of each quantity.</summary>
/// <remarks>
/// <para>Slew rate and acceleration: lower, for the motor has more torque at a lower speed and needs less for a lower acceleration. Start rate: lower, for it is a jump of speed. Ramp time and distance: higher,
/// which is a lower acceleration. Currents: higher, for torque grows with current and what was found to hold must still hold, but never above the rated current (or what the file asks for, if that is
/// more), for loss grows with its square. Delay: higher, so that the current never falls before the axis has come to rest.</para>
/// <para>Changeover: full-stepping has more torque and a resonance at low speed, microstepping has neither; which is safer depends on the mount, so it is kept on the same side of the slew.</para>
/// <para>A safe side is no promise: a slower slew may meet a resonance that a faster one passes. Run the move with what is typed.</para>
/// </remarks>
public static class SafeSides
{
    /// <summary>The safe side of a quantity.</summary>
    public static SafeSide Of(ControllerQuantity quantity) => quantity switch
    {
        ControllerQuantity.SlewRate or ControllerQuantity.StartRate or ControllerQuantity.Acceleration => SafeSide.Lower,
        ControllerQuantity.RampTime or ControllerQuantity.RampDistance or ControllerQuantity.CurrentFallDelay => SafeSide.Higher,
        ControllerQuantity.Changeover => SafeSide.SameStepping,
        _ => SafeSide.HigherToRated,
    };
}
