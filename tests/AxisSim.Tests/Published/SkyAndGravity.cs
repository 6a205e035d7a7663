using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Published;

/// <summary>Rates of the sky, standard gravity, worm periods and encoder counts.</summary>
public sealed class SkyAndGravity
{
    private const double ArcsecondsPerRadian = 180.0 * 3600.0 / Math.PI;

    [Fact]
    public void Mean_sidereal_rate()
    {
        // Aoki et al. (1982): 1.002737909350795 turns per UT1 day. ERFA 2.0.0.1 (gmst82) gives 15.0410686403 arcsec/s.
        Assert.Equal(15.041068640262, SkyRates.MeanSiderealRadiansPerSecond * ArcsecondsPerRadian, 5e-13);
        Assert.Equal(86164.09053083288, SkyRates.MeanSiderealDaySeconds, 1e-10);
    }

    [Fact]
    public void Stellar_rate()
    {
        // IAU 2000 Earth rotation angle (SOFA era00): 1.00273781191135448 turns per UT1 day; 15.0410671787 arcsec/s (ERFA).
        Assert.Equal(15.041067178670, SkyRates.StellarRadiansPerSecond * ArcsecondsPerRadian, 5e-13);
        Assert.Equal(86164.09890369035, SkyRates.StellarDaySeconds, 1e-10);
        // The IERS nominal rate 7.292115e-5 rad/s has seven digits.
        Assert.Equal(7.292115e-5, SkyRates.StellarRadiansPerSecond, 5e-12);
        // 0.13 arcsec in a day between the two, which texts mix.
        Assert.Equal(0.13, (SkyRates.MeanSiderealRadiansPerSecond - SkyRates.StellarRadiansPerSecond) * ArcsecondsPerRadian * 86400.0, 0.005);
    }

    [Fact]
    public void Solar_rate() =>
        Assert.Equal(15.0, SkyRates.SolarRadiansPerSecond * ArcsecondsPerRadian, 1e-13); // 1 296 000 arcsec / 86 400 s

    [Fact]
    public void Standard_gravity() =>
        Assert.Equal(9.80665, StandardGravity.MetresPerSecondSquared); // exact: 3rd CGPM (1901), CODATA

    [Theory]
    [InlineData(144, 598.3617)]
    [InlineData(180, 478.6894)]
    [InlineData(360, 239.3447)]
    public void Worm_period(int teeth, double seconds)
    {
        // The sidereal day 86164.0905 s (Aoki et al. 1982) over the wheel's teeth, derived; given to four decimals.
        Assert.Equal(seconds, new WormStage { WheelTeeth = teeth }.WormPeriodSeconds, 5.1e-5);
    }

    [Fact]
    public void Eccentric_wheel()
    {
        // Textbook: error of an eccentric wheel = eccentricity over pitch radius; 10 um at 72 mm is 28.648 arcsec.
        Assert.Equal(28.648, PeriodicErrorLaw.EccentricityAmplitude(10e-6, 72e-3) * ArcsecondsPerRadian, 5e-4);
    }
}
