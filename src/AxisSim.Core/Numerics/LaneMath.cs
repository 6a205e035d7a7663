using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Numerics;

/// <summary>Sine and cosine together, and the exponential, inlined into the step; the same bits in a number and in every lane of a vector.</summary>
internal static class LaneMath
{
    private const double QuarterTurnsPerRadian = 2.0 / Math.PI;

    // Adding 1.5 x 2^52 rounds to a whole number and leaves it in the low bits.
    private const double Rounder = 6755399441055744.0;
    private const double QuarterTurnHigh = 1.5707963267948966;
    private const double QuarterTurnLow = 6.123233995736766e-17;
    private const double Log2OfE = 1.4426950408889634;
    private const double NaturalLogOf2High = 6.93147180369123816490e-01;
    private const double NaturalLogOf2Low = 1.90821492927058770002e-10;
    private const double LeastExponent = -700.0;

    /// <summary>Sine and cosine of an angle in rad.</summary>
    /// <remarks>
    /// The library's pair costs a quarter of a step, for it is a call that must serve any argument. Here the argument is brought within an eighth of a turn by
    /// a two-part pi/2 with fused multiply-add, then the minimax polynomials of fdlibm's kernels (k_sin.c, k_cos.c) are used. Within 2.3e-16 of
    /// the library up to 1e6 rad (a test holds it there); the quarter-turn count must fit the digits of the argument, so not for more than about 1e9.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos(V radians, out V sin, out V cos)
    {
        V rounder = Op.Create(Rounder);
        V shifted = Op.FusedMultiplyAdd(radians, Op.Create(QuarterTurnsPerRadian), rounder);
        V quarters = rounder - shifted;
        V r = Op.FusedMultiplyAdd(quarters, Op.Create(QuarterTurnHigh), radians);
        r = Op.FusedMultiplyAdd(quarters, Op.Create(QuarterTurnLow), r);
        V z = r * r;
        V zz = z * z;
        V s = Op.FusedMultiplyAdd(r * z, SinePolynomial(z, zz), r);
        V c = Op.FusedMultiplyAdd(zz, CosinePolynomial(z, zz), Op.FusedMultiplyAdd(z, Op.Create(-0.5), Op.Create(1.0)));
        Turn(shifted, s, c, out sin, out cos);
    }

    /// <summary>Sine and cosine of an angle in quarter turns: its whole part needs no multiplication to be taken off.</summary>
    /// <remarks>One term less in each polynomial, minimax over an eighth of a turn (Remez's exchange in 60 digits): within 2.2e-15 and 1e-16, and roundings. This is the step's own pair.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCosOfQuarters(V quarterTurns, out V sin, out V cos)
    {
        V shifted = quarterTurns + Op.Create(Rounder);
        V whole = shifted - Op.Create(Rounder);
        V r = (quarterTurns - whole) * Op.Create(QuarterTurnHigh);
        V z = r * r;
        V zz = z * z;
        V low = Op.FusedMultiplyAdd(z, Op.Create(0.0083333333219285160167), Op.Create(-0.16666666666606086234));
        V high = Op.FusedMultiplyAdd(z, Op.Create(2.7555099310017468644e-6), Op.Create(-0.0001984126236810391832));
        V sine = Op.FusedMultiplyAdd(zz, Op.FusedMultiplyAdd(zz, Op.Create(-2.4745486567725708713e-8), high), low);
        low = Op.FusedMultiplyAdd(z, Op.Create(-0.0013888888878274390111), Op.Create(0.041666666666602257553));
        high = Op.FusedMultiplyAdd(z, Op.Create(-2.7555567134999131956e-7), Op.Create(0.00002480158097169487885));
        V cosine = Op.FusedMultiplyAdd(zz, Op.FusedMultiplyAdd(zz, Op.Create(2.0647738116640334278e-9), high), low);
        Turn(shifted, Op.FusedMultiplyAdd(r * z, sine, r), Op.FusedMultiplyAdd(zz, cosine, Op.FusedMultiplyAdd(z, Op.Create(-0.5), Op.Create(1.0))), out sin, out cos);
    }

    /// <summary>Sine and cosine of a small angle d added to one whose sine and cosine are known, by their series to d^5 and d^6; left out is d^7/5040.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Advance(V sin, V cos, V d, out V sinThen, out V cosThen)
    {
        V z = d * d;
        V s = Op.FusedMultiplyAdd(d * z, Op.FusedMultiplyAdd(z, Op.Create(1.0 / 120.0), Op.Create(-1.0 / 6.0)), d);
        V c = z * Op.FusedMultiplyAdd(z, Op.FusedMultiplyAdd(z, Op.Create(-1.0 / 720.0), Op.Create(1.0 / 24.0)), Op.Create(-0.5));
        sinThen = Op.FusedMultiplyAdd(cos, s, Op.FusedMultiplyAdd(sin, c, sin));
        cosThen = Op.FusedMultiplyAdd(-sin, s, Op.FusedMultiplyAdd(cos, c, cos));
    }

    /// <summary>Turns sine and cosine on by whole quarter turns, which are in the low bits of <paramref name="shifted"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Turn(V shifted, V s, V c, out V sin, out V cos)
    {
        // Swap and signs without a branch: at speed the quarter changes every few steps, which no predictor follows.
        var turn = Op.AsInt64(shifted);
        var sine = Op.AsInt64(s);
        var cosine = Op.AsInt64(c);
        var swap = (sine ^ cosine) & -(turn & Op.Create(1L));
        sine ^= swap ^ ((turn & Op.Create(2L)) << 62);
        cosine ^= swap ^ (((turn + Op.Create(1L)) & Op.Create(2L)) << 62);
        sin = Op.AsDouble(sine);
        cos = Op.AsDouble(cosine);
    }

    /// <summary>Exponential of a number not above zero; below -700 it is that of -700.</summary>
    /// <remarks><c>e^x = 2^k e^r</c>, r within half of ln 2; the Taylor series of e^r to the 13th power leaves 4e-18. Within 4e-16 of the library (a test holds it there).</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static V Exp(V value)
    {
        V x = Op.MaxNative(value, Op.Create(LeastExponent));
        V rounder = Op.Create(Rounder);
        V shifted = Op.FusedMultiplyAdd(x, Op.Create(Log2OfE), rounder);
        V k = rounder - shifted;
        V r = Op.FusedMultiplyAdd(k, Op.Create(NaturalLogOf2High), x);
        r = Op.FusedMultiplyAdd(k, Op.Create(NaturalLogOf2Low), r);
        V sum = Op.Create(1.0 / 6227020800.0);
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 479001600.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 39916800.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 3628800.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 362880.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 40320.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 5040.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 720.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 120.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 24.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0 / 6.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(0.5));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0));
        sum = Op.FusedMultiplyAdd(sum, r, Op.Create(1.0));
        return Op.AsDouble(Op.AsInt64(sum) + (Op.AsInt64(shifted) << 52));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V SinePolynomial(V z, V zz)
    {
        V low = Op.FusedMultiplyAdd(z, Op.Create(8.33333333332248946124e-03), Op.Create(-1.66666666666666324348e-01));
        V mid = Op.FusedMultiplyAdd(z, Op.Create(2.75573137070700676789e-06), Op.Create(-1.98412698298579493134e-04));
        V high = Op.FusedMultiplyAdd(z, Op.Create(1.58969099521155010221e-10), Op.Create(-2.50507602534068634195e-08));
        return Op.FusedMultiplyAdd(zz, Op.FusedMultiplyAdd(zz, high, mid), low);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V CosinePolynomial(V z, V zz)
    {
        V low = Op.FusedMultiplyAdd(z, Op.Create(-1.38888888888741095749e-03), Op.Create(4.16666666666666019037e-02));
        V mid = Op.FusedMultiplyAdd(z, Op.Create(-2.75573143513906633035e-07), Op.Create(2.48015872894767294178e-05));
        V high = Op.FusedMultiplyAdd(z, Op.Create(-1.13596475577881948265e-11), Op.Create(2.08757232129817482790e-09));
        return Op.FusedMultiplyAdd(zz, Op.FusedMultiplyAdd(zz, high, mid), low);
    }
}
