using AxisSim.Core.Recommendations;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Front and choices on points made by hand.</summary>
public sealed class ParetoFrontTests
{
    private static readonly FrontPoint Fast = Point(5.0, 1.0, 1.0, 10.0, 0.5, 1.35, 60.0);
    private static readonly FrontPoint Middle = Point(4.0, 2.0, 0.8, 12.0, 0.5, 2.0, 40.0);
    private static readonly FrontPoint Cool = Point(3.0, 2.0, 0.5, 20.0, 0.5, 1.4, 25.0);
    private static readonly FrontPoint Slow = Point(1.0, 2.0, 0.5, 60.0, 0.5, 1.5, 25.5);
    private static readonly FrontPoint Stepping = Point(6.0, 2.0, 1.0, 9.0, 0.5, 1.5, 65.0) with { };
    private static readonly FrontPoint Thin = Point(9.0, 1.0, 1.0, 6.0, 0.5, 1.1, 60.0);
    private static readonly FrontPoint Beaten = Point(4.0, 2.0, 0.8, 12.5, 0.5, 1.9, 41.0);

    private static FrontPoint[] All => [Beaten, Cool, Fast, Middle, Slow, Full(Stepping), Thin];

    [Fact]
    public void What_is_beaten_in_everything_is_not_on_the_front() =>
        Assert.Equal([Thin, Full(Stepping), Fast, Middle, Cool, Slow], ParetoFront.Of(All));

    [Fact]
    public void Each_aim_takes_what_it_says()
    {
        Assert.Equal(Full(Stepping), ParetoFront.Choose(All, RecommendAim.Fastest, 1.3));

        // Slow is as cool within 1 K, and slower.
        Assert.Equal(Cool, ParetoFront.Choose(All, RecommendAim.Coolest, 1.3));

        // Of those that microstep, the fastest takes 10.5 s; Slow takes more than twice that; Cool has the least current times rate.
        Assert.Equal(Cool, ParetoFront.Choose(All, RecommendAim.Quietest, 1.3));
        Assert.Equal(Middle, ParetoFront.Choose(All, RecommendAim.Balanced, 1.3));
    }

    [Fact]
    public void Of_two_as_fast_with_the_load_factor_at_its_cap_the_cooler_is_taken()
    {
        FrontPoint hot = Point(5.0, 1.0, 1.0, 2.4, 0.0, 6.0, 45.0), cool = Point(5.0, 1.0, 0.9, 2.4, 0.0, 6.0, 38.0);
        Assert.All(Enum.GetValues<RecommendAim>(), aim => Assert.Equal(cool, ParetoFront.Choose([hot, cool], aim, 1.3)));
    }

    [Fact]
    public void What_has_less_margin_than_asked_is_never_taken()
    {
        Assert.Equal(Thin, ParetoFront.Choose(All, RecommendAim.Fastest, 1.05));
        foreach (RecommendAim aim in Enum.GetValues<RecommendAim>())
        {
            Assert.Equal(Middle, ParetoFront.Choose(All, aim, 1.95));
            Assert.Null(ParetoFront.Choose(All, aim, 2.5));
        }
    }

    private static FrontPoint Full(FrontPoint point) => point with { Settings = point.Settings with { ChangeoverRadiansPerSecond = 20.0 } };

    private static FrontPoint Point(double degrees, double ramp, double amperes, double slew, double settle, double factor, double celsius) =>
        new(new AxisSettings(degrees * Setups.Degree, ramp, amperes, 0.3, 0.3, double.PositiveInfinity), slew, settle, factor, celsius);
}
