namespace AxisSim.Core.Outcomes;

/// <summary>How far the rotor of a move that keeps step swings from its field, at the moment at which that is the greatest share of what the field holds.</summary>
/// <remarks>
/// <para>Share <c>|d - d0|/D</c>: d load angle (rotor less plan), d0 that of the field, D the angle from the field to the place beyond which the rotor is pulled back no more,
/// behind or ahead, all in electrical rad (<see cref="Motors.FieldHold"/>). For a field of sine shape with the greatest torque Tp and a load t, both N m at the rotor,
/// <c>D = pi - asin(t/Tp)</c> against the load and <c>pi + asin(t/Tp)</c> with it. A steady load of half of Tp takes 30 of 150 degrees, 20 %; of nine tenths 64 of 116, 55 %; at all of it the share is 1. A rotor at rest that
/// is turned on by one full step and not damped overshoots by that step: 90 of 180 degrees, 50 %. A turning point beyond 1 is one from which the field alone would not have brought it back.</para>
/// <para>The load is what the planned motion asks of the shaft at that moment, with the swings of the axis on its springs, and the motor's own friction. The field of a stepped command jumps from
/// step to step; the rotor feels its mean over a radian of its own swing, so slow full steps count as they are and fast ones as a field that turns evenly.</para>
/// <para>Valid for what <see cref="Motors.FieldHold"/> is: where the supply limits the currents it tells more than there is of a fast swing. The bus voltage and the resistance of the cold winding are the nominal ones.
/// At a low reduction, where the load swings with the rotor, the load of the plan is only near.</para>
/// </remarks>
/// <param name="Share">Share of what the field holds.</param>
/// <param name="AngleRadians">Angle of the rotor from its field then, electrical rad; positive is towards greater angles.</param>
/// <param name="HeldRadians">What the field holds that way, electrical rad.</param>
/// <param name="TimeSeconds">When, s.</param>
/// <param name="MotorSpeedRadiansPerSecond">Planned motor speed then, rad/s (absolute).</param>
/// <param name="FullStepping">Whether the drive was full-stepping.</param>
public sealed record RotorSwing(double Share, double AngleRadians, double HeldRadians, double TimeSeconds, double MotorSpeedRadiansPerSecond, bool FullStepping);
