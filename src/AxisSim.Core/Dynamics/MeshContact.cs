using System.Runtime.CompilerServices;

namespace AxisSim.Core.Dynamics;

/// <summary>Torque of a tooth contact with backlash.</summary>
/// <remarks>
/// Law: with twist x and total backlash b the dead zone is <c>dz = x - b/2</c> above b/2, <c>x + b/2</c> below -b/2, else 0. Spring torque
/// <c>tc = k dz</c>; damping torque <c>td = c dx/dt</c>, only in contact, limited so that <c>|td| &lt;= |tc|</c>: the contact can push but
/// not pull and does not jump at impact. Without backlash both flanks touch and the damping is not limited. Units: rad, N m/rad, N m s/rad, N m. Source: the elasto-backlash element of the Modelica
/// Standard Library (class comment), which limits the damping in the same way.
/// </remarks>
internal readonly record struct MeshContact(double Stiffness, double Damping, double HalfBacklash)
{
    /// <summary>Elastic part of the twist, rad.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double DeadZone(double twist) =>
        twist > HalfBacklash ? twist - HalfBacklash : twist < -HalfBacklash ? twist + HalfBacklash : 0.0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Torque(double twist, double twistRate) => Damped(Stiffness * DeadZone(twist), twistRate);

    /// <summary>Torque of the spring with that of the damper, N m; also of a spring with another law.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Damped(double spring, double twistRate)
    {
        double limit = HalfBacklash > 0.0 ? Math.Abs(spring) : double.PositiveInfinity;
        double damping = Math.Min(Math.Max(Damping * twistRate, -limit), limit);
        return spring + damping;
    }
}
