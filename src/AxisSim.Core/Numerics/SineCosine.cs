using System.Runtime.CompilerServices;

namespace AxisSim.Core.Numerics;

/// <summary>Sine and cosine together, inlined into the step.</summary>
/// <remarks>
/// The library's pair costs a quarter of a step, for it is a call that must serve any argument. Here the argument is brought within an eighth of a turn by
/// a two-part pi/2 with fused multiply-add, then the minimax polynomials of fdlibm's kernels (k_sin.c, k_cos.c) are used. Within 2.3e-16 of
/// the library up to 1e6 rad (a test holds it there); the quarter-turn count must fit the digits of the argument, so not for more than about 1e9.
/// </remarks>
internal static class SineCosine
{
    private const double QuarterTurnsPerRadian = 2.0 / Math.PI;
    private const double Rounder = 6755399441055744.0;
    private const double QuarterTurnHigh = 1.5707963267948966;
    private const double QuarterTurnLow = 6.123233995736766e-17;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (double Sin, double Cos) Of(double radians)
    {
        // Adding 1.5 x 2^52 rounds to a whole number of quarter turns and leaves it in the low bits.
        double shifted = Math.FusedMultiplyAdd(radians, QuarterTurnsPerRadian, Rounder);
        double quarters = shifted - Rounder;
        long turn = BitConverter.DoubleToInt64Bits(shifted);
        double r = Math.FusedMultiplyAdd(-quarters, QuarterTurnHigh, radians);
        r = Math.FusedMultiplyAdd(-quarters, QuarterTurnLow, r);
        double z = r * r;
        double zz = z * z;
        double s = Math.FusedMultiplyAdd(r * z, Sine(z, zz), r);
        double c = Math.FusedMultiplyAdd(zz, Cosine(z, zz), Math.FusedMultiplyAdd(z, -0.5, 1.0));

        // Swap and signs without a branch: at speed the quarter changes every few steps, which no predictor follows.
        long sine = BitConverter.DoubleToInt64Bits(s);
        long cosine = BitConverter.DoubleToInt64Bits(c);
        long swap = (sine ^ cosine) & -(turn & 1);
        sine ^= swap ^ ((turn & 2) << 62);
        cosine ^= swap ^ (((turn + 1) & 2) << 62);
        return (BitConverter.Int64BitsToDouble(sine), BitConverter.Int64BitsToDouble(cosine));
    }

    // Both polynomials by pairs (Estrin): the step waits for them, so their depth counts more than their length.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Sine(double z, double zz)
    {
        double low = Math.FusedMultiplyAdd(z, 8.33333333332248946124e-03, -1.66666666666666324348e-01);
        double mid = Math.FusedMultiplyAdd(z, 2.75573137070700676789e-06, -1.98412698298579493134e-04);
        double high = Math.FusedMultiplyAdd(z, 1.58969099521155010221e-10, -2.50507602534068634195e-08);
        return Math.FusedMultiplyAdd(zz, Math.FusedMultiplyAdd(zz, high, mid), low);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Cosine(double z, double zz)
    {
        double low = Math.FusedMultiplyAdd(z, -1.38888888888741095749e-03, 4.16666666666666019037e-02);
        double mid = Math.FusedMultiplyAdd(z, -2.75573143513906633035e-07, 2.48015872894767294178e-05);
        double high = Math.FusedMultiplyAdd(z, -1.13596475577881948265e-11, 2.08757232129817482790e-09);
        return Math.FusedMultiplyAdd(zz, Math.FusedMultiplyAdd(zz, high, mid), low);
    }
}
