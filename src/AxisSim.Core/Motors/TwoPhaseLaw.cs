using System.Runtime.CompilerServices;

namespace AxisSim.Core.Motors;

/// <summary>Back-EMF and torque of a two-phase machine, averaged exactly over a step of uniform rotation.</summary>
/// <remarks>
/// <para>Law: <c>ea = -Km w sin(Nr th)</c>, <c>eb = Km w cos(Nr th)</c>,
/// <c>Te = Km (-ia sin(Nr th) + ib cos(Nr th)) - Td sin(4 Nr th)</c>; th shaft angle (rad), w speed (rad/s), Nr rotor teeth,
/// Km torque constant per phase (N m/A), Td detent torque (N m).</para>
/// <para>Over a step the angle sweeps <c>D = Nr w dt</c>; the mean of a sine over it is the mid value times
/// <c>1 - D^2/24</c>, and a current that changes by di adds <c>-(D/12)(dia cos + dib sin)</c> to the mean of the product
/// (both to second order in D; source: Taylor expansion about the middle). Valid for D below about 0.4.</para>
/// </remarks>
internal readonly record struct TwoPhaseLaw(double Teeth, double TorqueConstant, double Detent)
{
    /// <summary>Sine and cosine of the electrical angle in the middle of the step, with the step's sweep.</summary>
    internal readonly record struct Instant(double Sin, double Cos, double Sweep, double Smooth, double Speed);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Instant At(double rotorMid, double speedMid, double step)
    {
        Numerics.LaneMath.SinCos(Teeth * rotorMid, out double sin, out double cos);
        double sweep = Teeth * speedMid * step;
        return new Instant(sin, cos, sweep, 1.0 - (sweep * sweep * (1.0 / 24.0)), speedMid);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double BackEmfA(in Instant at) => -TorqueConstant * at.Speed * at.Sin * at.Smooth;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double BackEmfB(in Instant at) => TorqueConstant * at.Speed * at.Cos * at.Smooth;

    /// <summary>Mean torque of the currents, without the detent.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double CurrentTorque(in Instant at, double meanA, double meanB, double changeA, double changeB) =>
        TorqueConstant * ((((meanB * at.Cos) - (meanA * at.Sin)) * at.Smooth)
            - (at.Sweep * (1.0 / 12.0) * ((changeA * at.Cos) + (changeB * at.Sin))));

    /// <summary>Mean detent torque; sin(4x) = 4 sin x cos x (1 - 2 sin^2 x), so no further sine is needed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double DetentTorque(in Instant at) =>
        -Detent * 4.0 * at.Sin * at.Cos * (1.0 - (2.0 * at.Sin * at.Sin)) * (1.0 - (at.Sweep * at.Sweep * (16.0 / 24.0)));
}
