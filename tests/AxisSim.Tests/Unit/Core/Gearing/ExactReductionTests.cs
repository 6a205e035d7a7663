using System.Numerics;
using AxisSim.Core.Gearing;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Gearing;

public sealed class ExactReductionTests
{
    // Products of up to six roundings.
    private const double Rounding = 1e-14;

    private static readonly Gen<int> Teeth = Gen.Int[1, 1000];
    private static readonly Gen<Fraction> Fractions = Gen.Select(Teeth, Teeth, (n, d) => new Fraction(n, d));

    [Fact]
    public void A_fraction_is_in_lowest_terms_and_keeps_its_value() => Gen.Select(Teeth, Teeth).Sample((n, d) =>
    {
        Fraction made = new(n, d);
        Assert.Equal(made.Numerator * d, made.Denominator * n);
        Assert.True(BigInteger.GreatestCommonDivisor(made.Numerator, made.Denominator).IsOne);
        Assert.Equal((double)n / d, made.Value, Rounding * n / d);
        Assert.Equal(n % d == 0, made.IsWhole);
    });

    [Fact]
    public void Products_do_not_depend_on_order_and_have_a_unit() => Gen.Select(Fractions, Fractions, Fractions).Sample((a, b, c) =>
    {
        Assert.Equal(a.Times(b), b.Times(a));
        Assert.Equal(a.Times(b).Times(c), a.Times(b.Times(c)));
        Assert.Equal(a, a.Times(Fraction.One));
        Assert.Equal(Fraction.One, a.Times(new Fraction(a.Denominator, a.Numerator)));
    });

    [Fact]
    public void A_product_past_any_machine_word_stays_exact()
    {
        Fraction product = Enumerable.Range(0, 30).Aggregate(Fraction.One, (all, _) => all.Times(new Fraction(997, 991)));
        Assert.Equal(BigInteger.Pow(997, 30), product.Numerator);
        Assert.Equal(BigInteger.Pow(991, 30), product.Denominator);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    [InlineData(-3, 2)]
    public void A_part_that_is_not_positive_is_refused(int n, int d) => Assert.Throws<ArgumentOutOfRangeException>(() => new Fraction(n, d));

    [Fact]
    public void The_reduction_of_any_teeth_is_their_product() =>
        Gen.Select(Gen.Select(Gen.Int[8, 200], Gen.Int[8, 60]).List[0, 4], Gen.Int[30, 360], Gen.Int[1, 4]).Sample((stages, wheel, starts) =>
        {
            GearTrain train = Train(wheel, starts, [.. stages.Select(stage => ((double)stage.Item1, (double)stage.Item2))]);
            Fraction exact = Assert.NotNull(ExactReduction.Of(train));
            BigInteger driven = stages.Aggregate(new BigInteger(wheel), (all, stage) => all * stage.Item1);
            BigInteger driving = stages.Aggregate(new BigInteger(starts), (all, stage) => all * stage.Item2);
            Assert.Equal(driven * exact.Denominator, driving * exact.Numerator);
            Assert.Equal(train.TotalRatio, exact.Value, Rounding * train.TotalRatio);
            Assert.Empty(ExactReduction.GivenAsNumber(train));
        });

    [Fact]
    public void A_decimal_ratio_has_no_fraction_and_a_number_is_named()
    {
        Assert.Null(ExactReduction.Of(Train(144, 1, [(5.18, 1.0)])));
        Assert.Null(ExactReduction.Of(Train(144, 1, [(60.0, 12.0), (2.5, 1.0)])));
        GearTrain whole = Train(144, 1, [(60.0, 12.0), (3.0, 1.0)]);
        Assert.Equal("2160", ExactReduction.Of(whole).ToString());
        Assert.Equal(3.0, Assert.Single(ExactReduction.GivenAsNumber(whole)).DrivenTeeth);
        Assert.Equal("4320/7", ExactReduction.Of(Train(144, 1, [(60.0, 14.0)])).ToString());
    }

    private static GearTrain Train(int wheel, int starts, (double Driven, double Driving)[] stages) => new()
    {
        Worm = new WormStage { WheelTeeth = wheel, Starts = starts },
        Stages = [.. stages.Select(stage => new GearStage { Name = "stage", DrivenTeeth = stage.Driven, DrivingTeeth = stage.Driving })],
        StiffnessNewtonMetresPerRadian = 1e4,
    };
}
