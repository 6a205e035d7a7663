namespace AxisSim.Core.Sky;

/// <summary>Rates at which the sky turns past a mount, rad/s about the polar axis.</summary>
/// <remarks>
/// <para>"Sidereal" in AxisSim is the <b>mean sidereal</b> rate: the Earth's turning against the moving mean equinox,
/// 1.002737909350795 revolutions per UT1 day (Aoki et al. 1982, epoch J2000): 86164.0905308 s, 15.0410686403 arcsec/s.</para>
/// <para>The <b>stellar</b> rate is the turning against the fixed stars, 1.00273781191135448 revolutions per UT1 day
/// (IAU 2000 Earth rotation angle): 86164.0989037 s, 15.0410671787 arcsec/s. Texts mix the two; they differ by 1e-7 of their value,
/// 0.13 arcsec in a day.</para>
/// <para>Refraction and the proper motion of planets are left out; a UT1 second is taken as an SI second (within 1e-7).</para>
/// </remarks>
public static class SkyRates
{
    /// <summary>Revolutions per UT1 day of the Earth against the mean equinox (Aoki et al. 1982).</summary>
    public const double MeanSiderealTurnsPerDay = 1.002737909350795;

    /// <summary>Revolutions per UT1 day of the Earth against the fixed stars (IAU 2000 Earth rotation angle).</summary>
    public const double StellarTurnsPerDay = 1.00273781191135448;

    /// <summary>Seconds in a day.</summary>
    public const double SecondsPerDay = 86400.0;

    /// <summary>Mean sidereal rate, rad/s.</summary>
    public const double MeanSiderealRadiansPerSecond = 2.0 * Math.PI * MeanSiderealTurnsPerDay / SecondsPerDay;

    /// <summary>Stellar rate, rad/s.</summary>
    public const double StellarRadiansPerSecond = 2.0 * Math.PI * StellarTurnsPerDay / SecondsPerDay;

    /// <summary>Mean solar rate, rad/s: one revolution a day, 15 arcsec/s.</summary>
    public const double SolarRadiansPerSecond = 2.0 * Math.PI / SecondsPerDay;

    /// <summary>Mean sidereal day, s.</summary>
    public const double MeanSiderealDaySeconds = SecondsPerDay / MeanSiderealTurnsPerDay;

    /// <summary>Stellar day, s.</summary>
    public const double StellarDaySeconds = SecondsPerDay / StellarTurnsPerDay;
}
