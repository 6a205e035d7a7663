using AxisSim.Core.Numerics;
using AxisSim.Core.Stepping.Lanes;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Numerics;

public sealed class LaneMathTests
{
    /// <summary>One unit in the last place of 1: both polynomials and the library round once each.</summary>
    private const double OneRounding = 2.3e-16;

    /// <summary>Two roundings of the result, one of the reduced argument.</summary>
    private const double Relative = 4e-16;

    /// <summary>The sine's polynomial of five terms is good to 2.2e-15 at the ends of its range; roundings add up to 4e-16.</summary>
    private const double QuarterRounding = 2.6e-15;

    [Fact]
    public void SineAndCosineAgreeWithTheLibrary() => Gen.Double[-1e6, 1e6].Sample(
        x =>
        {
            LaneMath.SinCos(x, out double sin, out double cos);
            return Math.Abs(sin - Math.Sin(x)) <= OneRounding && Math.Abs(cos - Math.Cos(x)) <= OneRounding;
        },
        iter: 200_000);

    [Fact]
    public void QuarterTurnsAgreeWithTheLibrary() => Gen.Double[-1e5, 1e5].Sample(
        x =>
        {
            // Whole turns are taken off exactly, so that the library sees a small angle.
            double inside = Math.IEEERemainder(x, 4.0);
            LaneMath.SinCosOfQuarters(x, out double sin, out double cos);
            return Math.Abs(sin - Math.Sin(0.5 * Math.PI * inside)) <= QuarterRounding && Math.Abs(cos - Math.Cos(0.5 * Math.PI * inside)) <= QuarterRounding;
        },
        iter: 200_000);

    [Fact]
    public void WholeQuarterTurnsAreExact()
    {
        for (int k = -8; k <= 8; k++)
        {
            LaneMath.SinCosOfQuarters(k, out double sin, out double cos);
            int turn = ((k % 4) + 4) % 4;
            Assert.Equal(turn switch { 1 => 1.0, 3 => -1.0, _ => 0.0 }, Math.Abs(sin) == 0.0 ? 0.0 : sin);
            Assert.Equal(turn switch { 0 => 1.0, 2 => -1.0, _ => 0.0 }, Math.Abs(cos) == 0.0 ? 0.0 : cos);
        }
    }

    [Fact]
    public void ExponentialAgreesWithTheLibrary() =>
        Gen.Double[-690.0, 0.0].Sample(x => Math.Abs((LaneMath.Exp(x) / Math.Exp(x)) - 1.0) <= Relative, iter: 200_000);

    [Fact]
    public void TheExponentialOfSomethingHugeIsNextToNothing()
    {
        Assert.Equal(1.0, LaneMath.Exp(0.0));
        Assert.InRange(LaneMath.Exp(double.NegativeInfinity), 0.0, 1e-300);
    }

    [Fact]
    public void TheShareOfAnIntervalIsThatOfItsMean() => Gen.Double[1e-9, 60.0].Sample(x =>
    {
        // Mean of exp(-t) over [0, x] is (1 - exp(-x))/x = 1 - (1 - E) s.
        double decay = Math.Exp(-x);
        double mean = ExpM1(x) / x;
        return Math.Abs(1.0 - (ExpM1(x) * PhaseLaw.Share(x, decay)) - mean) < 1e-12;
    });

    // 1 - exp(-x) without cancellation.
    private static double ExpM1(double x) => 2.0 * Math.Tanh(0.5 * x) / (1.0 + Math.Tanh(0.5 * x));
}
