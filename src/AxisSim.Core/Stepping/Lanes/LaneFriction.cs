using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Dry friction over a step in which a body may come to rest, the law of <see cref="Dynamics.DryFriction"/>: it can stop a motion but not reverse it.</summary>
/// <remarks>
/// All arguments are changes of speed over a step. Where the speed passes zero the step is cut there. Most steps pass no zero in any lane and do not come here;
/// lanes that pass none keep what they have.
/// </remarks>
internal static class LaneFriction
{
    /// <summary>Speed after the step.</summary>
    /// <param name="speed">Speed before it.</param>
    /// <param name="after">Speed after it, were there no rest.</param>
    /// <param name="push">Change by all but dry friction.</param>
    /// <param name="positive">Change by friction in motion to the positive side.</param>
    /// <param name="negative">The same to the negative side.</param>
    /// <param name="breakaway">What a body at rest withstands besides.</param>
    /// <param name="overrun">Half of it is to be taken off the angle at the end of the step.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static V Passing(V speed, V after, V push, V positive, V negative, V breakaway, out V overrun)
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
        var stuck = still & Op.LessThanOrEqual(Op.Abs(push), breakaway);
        end = Op.ConditionalSelect(still, rest, end);
        over = Op.ConditionalSelect(still, zero, over);
        var through = (Op.GreaterThan(speed, zero) & Op.GreaterThan(after, zero)) | (Op.LessThan(speed, zero) & Op.LessThan(after, zero));
        overrun = Op.ConditionalSelect(through, zero, over);
        return Op.ConditionalSelect(stuck, zero, Op.ConditionalSelect(through, after, end));
    }
}
