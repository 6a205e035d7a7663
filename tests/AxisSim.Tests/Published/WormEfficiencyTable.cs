using AxisSim.Core.Gearing;

namespace AxisSim.Tests.Published;

/// <summary>Worm efficiency against lead angle at f = 0.05: Shigley, Mechanical Engineering Design, table 13-6 (from memory).</summary>
public sealed class WormEfficiencyTable
{
    // The table has one decimal of a percent.
    private const double LastDigit = 0.0006;

    // The table does not say its pressure angle for each row; 14.5 degrees up to 15 degrees of lead and 20 above is the usual choice for worms.
    private static double Pressure(double leadDegrees) => double.DegreesToRadians(leadDegrees <= 15.0 ? 14.5 : 20.0);

    [Theory]
    [InlineData(1.0, 25.2)]
    [InlineData(2.5, 45.7)]
    [InlineData(7.5, 71.3)]
    [InlineData(10.0, 76.6)]
    [InlineData(15.0, 82.7)]
    [InlineData(20.0, 85.6)]
    [InlineData(30.0, 88.7)]
    public void Efficiency(double leadDegrees, double percent) => Assert.Equal(
        percent / 100.0, WormLaw.DrivingEfficiency(double.DegreesToRadians(leadDegrees), 0.05, Pressure(leadDegrees)), LastDigit);

    [Fact]
    public void Entry_at_five_degrees_lies_within_what_is_remembered_of_it()
    {
        // Remembered as 62.0 or 62.6 %; the book was not at hand, so it is not tested tighter than that range.
        Assert.InRange(WormLaw.DrivingEfficiency(double.DegreesToRadians(5.0), 0.05, Pressure(5.0)), 0.62 - LastDigit, 0.626 + LastDigit);
    }

    [Fact]
    public void Self_locking_limit()
    {
        // Mott, Machine Elements in Mechanical Design, recommends a lead angle up to about 5 degrees for self-locking; f >= cos pn tan L
        // at f = 0.05 gives 3.05 degrees (20 degrees of pressure angle) and 2.96 (14.5), derived here.
        const double TwoDecimals = 0.005;
        Assert.Equal(3.05, double.RadiansToDegrees(WormLaw.SelfLockingLeadAngle(0.05, double.DegreesToRadians(20.0))), TwoDecimals);
        Assert.Equal(2.96, double.RadiansToDegrees(WormLaw.SelfLockingLeadAngle(0.05, double.DegreesToRadians(14.5))), TwoDecimals);
        Assert.True(WormLaw.IsSelfLocking(double.DegreesToRadians(3.0), 0.05, double.DegreesToRadians(20.0)));
        Assert.False(WormLaw.IsSelfLocking(double.DegreesToRadians(3.1), 0.05, double.DegreesToRadians(20.0)));
        // At f = 0.09, within the range of greased steel on bronze, the recommended 5 degrees do lock.
        Assert.True(WormLaw.IsSelfLocking(double.DegreesToRadians(5.0), 0.09, double.DegreesToRadians(20.0)));
    }
}
