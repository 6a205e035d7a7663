using AxisSim.Core.Numerics;
using CsCheck;

namespace AxisSim.Tests.Unit.Numerics;

public sealed class SineCosineTests
{
    /// <summary>One unit in the last place of 1: both polynomials and the library round once each.</summary>
    private const double Tolerance = 2.3e-16;

    [Fact]
    public void AgreesWithTheLibraryOverAllAnglesOfARun() =>
        Gen.Double[-1e6, 1e6].Sample(x => Near(x), iter: 200_000);

    [Theory]
    [InlineData(0.0)]
    [InlineData(Math.PI / 4)]
    [InlineData(-Math.PI / 4)]
    [InlineData(Math.PI / 2)]
    [InlineData(Math.PI)]
    [InlineData(-Math.PI)]
    [InlineData(1e-300)]
    [InlineData(113097.335529)]
    public void AgreesAtTheSeams(double x) => Assert.True(Near(x));

    [Fact]
    public void IsExactlyOddAndEven() => Gen.Double[0.0, 1e5].Sample(
        x =>
        {
            (double s, double c) = SineCosine.Of(x);
            (double sm, double cm) = SineCosine.Of(-x);
            return s == -sm && c == cm;
        },
        iter: 20_000);

    private static bool Near(double x)
    {
        (double s, double c) = SineCosine.Of(x);
        (double sin, double cos) = Math.SinCos(x);
        return Math.Abs(s - sin) <= Tolerance && Math.Abs(c - cos) <= Tolerance;
    }
}
