using AxisSim.Cli.Text;
using AxisSim.Tests.Golden;

namespace AxisSim.Tests.Unit.Report.Text;

public sealed class SayTests
{
    [Theory]
    [InlineData(0.0000123456, "0.0000123")]
    [InlineData(1.5, "1.5")]
    [InlineData(3.0, "3")]
    [InlineData(1234.56, "1235")]
    [InlineData(153600.0, "153600")]
    [InlineData(-0.0001234, "-0.000123")]
    [InlineData(0.9996, "1")]
    [InlineData(0.0, "0")]
    [InlineData(-1e-300, "0")]
    [InlineData(double.NaN, "unknown")]
    [InlineData(double.PositiveInfinity, "unlimited")]
    public void A_number_has_three_digits_and_no_exponent(double value, string expected)
    {
        foreach (string culture in new[] { "", "fr-FR", "ar-SA" })
        {
            Assert.Equal(expected, Cultures.Under(culture, () => Say.Number(value)));
        }
    }

    [Theory]
    [InlineData(0.165, "165 mN m")]
    [InlineData(1.65, "1.65 N m")]
    [InlineData(0.9999, "1 N m")]
    public void A_shaft_torque_takes_the_unit_that_fits(double newtonMetres, string expected) => Assert.Equal(expected, Units.ShaftTorque(newtonMetres));

    [Theory]
    [InlineData(4.5, "4.5 arcsec")]
    [InlineData(599.0, "599 arcsec")]
    [InlineData(1800.0, "30 arcmin")]
    [InlineData(36000.0, "10 deg")]
    public void A_small_angle_takes_the_unit_that_fits(double arcseconds, string expected) =>
        Assert.Equal(expected, Units.SmallAngle(arcseconds * Math.PI / 648000.0));

    [Fact]
    public void A_number_stays_with_its_unit_when_a_line_breaks()
    {
        for (int width = 20; width < 60; width++)
        {
            string[] lines = [.. Wrap.Lines("needed 156 mN m, which is 6.7 mN m to accelerate at 144 rpm and 2.5 N m about the axis", width, 0, 2)];
            Assert.All(lines, line => Assert.InRange(line.Length, 1, width));
            Assert.All(lines[..^1], line => Assert.False(char.IsAsciiDigit(line[^1]) || line.EndsWith(" mN", StringComparison.Ordinal) || line.EndsWith(" N", StringComparison.Ordinal), line));
        }
    }
}
