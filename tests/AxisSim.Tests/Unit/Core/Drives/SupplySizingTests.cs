using AxisSim.Core.Drives;

namespace AxisSim.Tests.Unit.Core.Drives;

/// <summary>Supply and fuse by the rule, worked out by hand.</summary>
public sealed class SupplySizingTests
{
    [Fact]
    public void Two_drives_on_one_supply()
    {
        // 0.441/0.85 + 2 x 0.05 = 0.61882 A; / 0.8 = 0.77353 A; / 0.75 = 0.8251 A, and the next rating is 1 A.
        double drives = SupplySizing.DriveAmperes(0.441, drives: 2);
        Assert.Equal(0.61882, drives, 1e-5);
        Assert.Equal(0.77353, SupplySizing.SupplyAmperes(drives), 1e-5);
        Assert.Equal(1.0, SupplySizing.FuseAmperes(drives));
    }

    [Theory]
    [InlineData(0.75, 1.0)] // just at 75 %
    [InlineData(0.7501, 1.25)]
    [InlineData(3.0, 4.0)]
    [InlineData(4.5, 6.3)]
    [InlineData(9.0, 12.5)]
    [InlineData(74.0, 100.0)]
    public void A_fuse_is_the_next_rating(double amperes, double rating) => Assert.Equal(rating, SupplySizing.FuseAmperes(amperes));

    [Fact]
    public void Beyond_the_ratings_there_is_none() => Assert.True(double.IsNaN(SupplySizing.FuseAmperes(80.0)));
}
