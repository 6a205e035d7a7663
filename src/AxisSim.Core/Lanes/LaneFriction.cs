using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>Dry friction over a step, the law of <see cref="Dynamics.DryFriction"/>: it can stop a motion but not reverse it, and the step is cut where the speed passes zero.</summary>
/// <remarks>All arguments are changes of speed over a step. Most steps pass no zero in any lane; those that do take the slow way, in all lanes.</remarks>
internal static class LaneFriction
{
    /// <summary>Speed after the step of a body that carries a loaded mesh and has dry friction of its own.</summary>
    /// <param name="speed">Speed before it.</param>
    /// <param name="push">Change by all but dry friction.</param>
    /// <param name="load">Change that the mesh load alone would make; its friction is a share of it.</param>
    /// <param name="driving">That share in motion against the load.</param>
    /// <param name="back">The same in motion with it.</param>
    /// <param name="coulomb">Own dry friction.</param>
    /// <param name="overrun">Half of it times the step is to be taken off the angle.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Kick(V speed, V push, V load, V driving, V back, V coulomb, out V overrun)
    {
        V zero = Op.Create(0.0);
        V resist = Op.FusedMultiplyAdd(Op.Abs(load), Op.ConditionalSelect(Op.GreaterThan(load * speed, zero), driving, back), coulomb);
        V after = speed + push - Op.CopySign(resist, speed);
        overrun = zero;
        return Op.GreaterThanAll(speed * after, zero) ? after : Passing(speed, after, push, load, driving, back, coulomb, out overrun);
    }

    /// <summary>The same for a body whose friction does not depend on the direction but is greater from rest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Kick(V speed, V push, V coulomb, V breakaway, out V overrun)
    {
        V zero = Op.Create(0.0);
        V after = speed + push - Op.CopySign(coulomb, speed);
        overrun = zero;
        return Op.GreaterThanAll(speed * after, zero) ? after : Passing(speed, after, push, coulomb, breakaway, out overrun);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static V Passing(V speed, V after, V push, V load, V driving, V back, V coulomb, out V overrun)
    {
        var against = Op.GreaterThan(load, Op.Create(0.0));
        V size = Op.Abs(load);
        V positive = Op.FusedMultiplyAdd(size, Op.ConditionalSelect(against, driving, back), coulomb);
        V negative = Op.FusedMultiplyAdd(size, Op.ConditionalSelect(against, back, driving), coulomb);
        return Cut(speed, after, push, positive, negative, out overrun);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static V Passing(V speed, V after, V push, V coulomb, V breakaway, out V overrun)
    {
        V zero = Op.Create(0.0);
        V end = Cut(speed, after, push, coulomb, coulomb, out overrun);
        var stuck = Op.Equals(speed, zero) & Op.LessThanOrEqual(Op.Abs(push), breakaway);
        overrun = Op.ConditionalSelect(stuck, zero, overrun);
        return Op.ConditionalSelect(stuck, zero, end);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Cut(V speed, V after, V push, V positive, V negative, out V overrun)
    {
        V zero = Op.Create(0.0);
        V one = Op.Create(1.0);
        V rest = Op.ConditionalSelect(
            Op.GreaterThan(push, positive),
            push - positive,
            Op.ConditionalSelect(Op.LessThan(push, -negative), push + negative, zero));
        V left = one - (speed / (speed - after));
        V end = left * rest;
        V over = Op.FusedMultiplyAdd(one - left, end, left * speed);
        var still = Op.Equals(speed, zero);
        end = Op.ConditionalSelect(still, rest, end);
        over = Op.ConditionalSelect(still, zero, over);
        var through = (Op.GreaterThan(speed, zero) & Op.GreaterThan(after, zero)) | (Op.LessThan(speed, zero) & Op.LessThan(after, zero));
        overrun = Op.ConditionalSelect(through, zero, over);
        return Op.ConditionalSelect(through, after, end);
    }
}
