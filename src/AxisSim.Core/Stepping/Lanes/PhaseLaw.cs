using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>The current of one phase over an interval, regulated, within what the supply can do; the law of <see cref="Motors.PhaseCircuit"/> in the form that takes least work.</summary>
/// <remarks>
/// <para>Each of the three solutions relaxes towards a level X: <c>end = X + (start - X) E</c>, E decay over the interval (-). At full voltage +-V the level is
/// <c>(+-V - e) G</c>, so its ends are <c>start E - e G (1 - E) +- V G (1 - E)</c>; G conductance (S), e back-EMF (V). The end is the regulated one between these two.</para>
/// <para>Mean: with E = exp(-x) it is <c>start + (end - start) s</c>, <c>s = 1/(1 - E) - 1/x</c>, whatever the level; s is that of the solution that holds at the end.</para>
/// </remarks>
internal static class PhaseLaw
{
    // Up to it the share is taken from its series (Bernoulli's numbers), for the difference would cancel; the first term left out is 1.4e-12 x^15.
    private const double SeriesTo = 0.5;

    /// <param name="start">Current at the start, A.</param>
    /// <param name="target">What is commanded, A.</param>
    /// <param name="free">End without voltage: <c>start E - e G (1 - E)</c> of the winding, A.</param>
    /// <param name="reach"><c>V G (1 - E)</c>, A.</param>
    /// <param name="regulator">E of the regulator.</param>
    /// <param name="regulatorShare">Its s.</param>
    /// <param name="windingShare">s of the winding.</param>
    /// <param name="change">End less start, A.</param>
    /// <param name="mean">Mean, A.</param>
    /// <param name="limited">1 where the supply limits it, else 0.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Advance(V start, V target, V free, V reach, V regulator, V regulatorShare, V windingShare, out V change, out V mean, out V limited)
    {
        V asked = Op.FusedMultiplyAdd(start - target, regulator, target);
        V end = Op.MaxNative(free - reach, Op.MinNative(free + reach, asked));
        change = end - start;
        mean = Op.FusedMultiplyAdd(Op.ConditionalSelect(Op.Equals(end, asked), regulatorShare, windingShare), change, start);
        limited = Op.ConditionalSelect(Op.Equals(asked, end), Op.Create(0.0), Op.Create(1.0));
        return end;
    }

    /// <summary>s of an interval of x time constants whose decay is known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Share(V x, V decay)
    {
        V z = x * x;
        V sum = Op.FusedMultiplyAdd(z, Op.Create(1.0 / 74724249600.0), Op.Create(-691.0 / 1307674368000.0));
        sum = Op.FusedMultiplyAdd(z, sum, Op.Create(1.0 / 47900160.0));
        sum = Op.FusedMultiplyAdd(z, sum, Op.Create(-1.0 / 1209600.0));
        sum = Op.FusedMultiplyAdd(z, sum, Op.Create(1.0 / 30240.0));
        sum = Op.FusedMultiplyAdd(z, sum, Op.Create(-1.0 / 720.0));
        sum = Op.FusedMultiplyAdd(z, sum, Op.Create(1.0 / 12.0));
        V series = Op.FusedMultiplyAdd(x, sum, Op.Create(0.5));
        V limit = Op.Create(SeriesTo);
        if (Op.LessThanOrEqualAll(x, limit))
        {
            return series;
        }

        V one = Op.Create(1.0);
        return Op.ConditionalSelect(Op.LessThanOrEqual(x, limit), series, (one / (one - decay)) - (one / x));
    }
}
