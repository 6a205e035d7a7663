using AxisSim.Core.Outcomes;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Outcomes;

public sealed class SmoothRangeTests
{
    private const long Last = 170;

    /// <summary>A crest, a corner that turns, a jump and one step alone: found to the number among 171.</summary>
    [Fact]
    public void Crests_corners_and_jumps_are_found() =>
        (from at in Gen.Long[0, Last]
         from kind in Gen.Int[0, 3]
         from up in Gen.Double[0.1, 3.0]
         from down in Gen.Double[0.1, 3.0]
         from falls in Gen.Bool
         select (at, kind, up, down, sign: falls ? -1.0 : 1.0)).Sample(g =>
        {
            double Value(long k) => g.sign * g.kind switch
            {
                0 => Math.Cos(0.01 * g.up * (k - g.at)),
                1 => k < g.at ? g.up * (k - g.at) : g.down * (g.at - k),
                2 => (0.01 * k) + (k < g.at ? 0.0 : g.up),
                _ => g.up * k,
            };
            AssertSame(Value, SmoothRange.Of(0, Last, Last, k => (Value(k), -Value(k))).One);
            SmoothRange mirrored = SmoothRange.Of(0, Last, Last, k => (0.0, -Value(k))).Other;
            AssertSame(k => -Value(k), mirrored);
        });

    [Fact]
    public void A_smooth_function_is_asked_at_its_ends_and_its_middle_only()
    {
        int asked = 0;
        SmoothRange range = SmoothRange.Of(1000, 1000 + Last, Last, k =>
        {
            asked++;
            return (Math.Exp(1e-6 * k), 3.0);
        }).One;
        Assert.Equal(3, asked);
        Assert.Equal(Math.Exp(1e-3), range.Least);
        Assert.Equal(Math.Exp(1e-6 * (1000 + Last)), range.Greatest);
        Assert.Equal(0.5 * (range.Least + range.Greatest), range.Mean, 1e-6);
    }

    [Fact]
    public void One_number_alone_is_its_own_range() => Assert.Equal(new SmoothRange(2.0, 2.0, 2.0), SmoothRange.Of(7, 7, Last, _ => (2.0, 0.0)).One);

    [Fact]
    public void What_is_not_a_number_ends_the_search() => Assert.True(double.IsNaN(SmoothRange.Of(0, Last, Last, _ => (double.NaN, double.PositiveInfinity)).One.Least));

    private static void AssertSame(Func<long, double> value, SmoothRange range)
    {
        double[] all = [.. Enumerable.Range(0, (int)Last + 1).Select(k => value(k))];
        Assert.Equal(all.Min(), range.Least);
        Assert.Equal(all.Max(), range.Greatest);
        Assert.Equal(all.Average(), range.Mean, 0.01 * (all.Max() - all.Min()) + 1e-12);
    }
}
