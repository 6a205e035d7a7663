using AxisSim.Core.Recommendations;
using MathNet.Numerics.Distributions;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Exact binomial bounds against the rule of three, printed tables and the binomial sum that defines them.</summary>
public sealed class ClopperPearsonTests
{
    // The tables have three decimals.
    private const double Printed = 6e-4;

    [Theory]
    [InlineData(10)]
    [InlineData(200)]
    [InlineData(10000)]
    public void None_of_n_is_the_rule_of_three(int trials)
    {
        Assert.Equal(1.0 - Math.Pow(0.05, 1.0 / trials), ClopperPearson.Upper(0, trials, 0.95), 1e-12);

        // Rule of three, from memory: -ln 0.05 = 2.996, so 3/n, less a term of 4.5/n^2.
        Assert.InRange(ClopperPearson.Upper(0, trials, 0.95), (3.0 / trials) - (4.6 / trials / trials) - (0.005 / trials), 3.0 / trials);
    }

    /// <summary>Two-sided 95 % limits from tables of the binomial (from memory): 0, 1 and 5 of 10; 5 of 20.</summary>
    [Theory]
    [InlineData(0, 10, 0.0, 0.308)]
    [InlineData(1, 10, 0.003, 0.445)]
    [InlineData(5, 10, 0.187, 0.813)]
    [InlineData(5, 20, 0.087, 0.491)]
    public void Printed_limits(int happened, int trials, double lower, double upper)
    {
        Assert.Equal(lower, ClopperPearson.Lower(happened, trials, 0.975), Printed);
        Assert.Equal(upper, ClopperPearson.Upper(happened, trials, 0.975), Printed);
    }

    [Theory]
    [InlineData(3, 50, 0.95)]
    [InlineData(17, 200, 0.9)]
    public void The_bound_is_where_the_binomial_sum_is_what_is_left(int happened, int trials, double confidence)
    {
        Assert.Equal(1.0 - confidence, Binomial.CDF(ClopperPearson.Upper(happened, trials, confidence), trials, happened), 1e-9);
        Assert.Equal(1.0 - confidence, 1.0 - Binomial.CDF(ClopperPearson.Lower(happened, trials, confidence), trials, happened - 1), 1e-9);
    }

    [Fact]
    public void The_ends()
    {
        Assert.Equal(1.0, ClopperPearson.Upper(7, 7, 0.95));
        Assert.Equal(0.0, ClopperPearson.Lower(0, 7, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearson.Upper(8, 7, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearson.Upper(0, 0, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => ClopperPearson.Upper(0, 1, 1.0));
    }
}
