namespace AxisSim.Core.Drives;

/// <summary>Damping of a rotor on its magnetic field, and what share of critical it is.</summary>
/// <remarks>
/// <para>The rotor swings about its command like a mass on a spring: <c>J d2x/dt2 + D dx/dt + K x = 0</c>, x rotor less command (rad of the shaft), J inertia of the rotor
/// and of the train's wheels seen at its shaft (kg m2; not of the load, for a mount's mesh is far softer than the field and leaves it out of the swing),
/// <c>K = Nr Km I</c> stiffness of the microstepping field at the slew current about lag zero (N m/rad; Nr rotor teeth, Km torque constant, I current, detent left out).
/// Critical damping is <c>2 sqrt(J K)</c> (N m s/rad), and D a share of it; the logarithmic decrement of the swing is <c>2 pi share/sqrt(1 - share^2)</c>.
/// The torque is <c>-D</c> times rotor speed less commanded speed, so it takes nothing from steady running. Full-stepping with both phases on stiffens the field by
/// sqrt(2), and a lower current softens it: D stays.</para>
/// <para>Published: the single step of a hybrid motor is damped with 0.3 to 0.4 of critical, of a reluctance motor with down to 0.1 (Hughes, <i>Electric Motors and Drives</i>, on
/// the transient performance of stepping motors): there the windings, fed with a voltage, damp most of it. Bearings and iron alone: viscous drag of 8e-4 N m s/rad with J = 4.5e-5 kg m2,
/// Nr = 50, Km = 0.19 N m/A, so 0.9 % of critical at 5 A (motor of Bodson and others, <i>High-performance nonlinear feedback control of a permanent magnet
/// stepper motor</i>, 1993; figures read in others' model of it). An ideal averaged chopper takes the windings' damping out; a real one leaves some of it.
/// So the default lies between, in the lower half: 5 %. That choice is common practice, no source.</para>
/// </remarks>
public static class RotorDamping
{
    /// <summary>Share of critical where none is given.</summary>
    public const double UsualShare = 0.05;

    /// <summary>The least share that is usual: bearings and iron alone.</summary>
    public const double LeastUsualShare = 0.01;

    /// <summary>The greatest share that is usual: windings that damp as under a voltage, or a damper on the shaft.</summary>
    public const double MostUsualShare = 0.3;
}
