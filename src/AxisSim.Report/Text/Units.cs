using AxisSim.Core.Sky;

namespace AxisSim.Report.Text;

/// <summary>SI values in the units that people at a mount use.</summary>
internal static class Units
{
    private const double ArcsecondsPerRadian = 648000.0 / Math.PI;
    private const double DegreesPerRadian = 180.0 / Math.PI;
    private const double RpmPerRadianPerSecond = 30.0 / Math.PI;

    public static double Degrees(double radians) => radians * DegreesPerRadian;

    public static double Arcseconds(double radians) => radians * ArcsecondsPerRadian;

    public static double Rpm(double radiansPerSecond) => radiansPerSecond * RpmPerRadianPerSecond;

    /// <summary>Torque at the motor's shaft: mN m below 1 N m.</summary>
    public static string ShaftTorque(double newtonMetres) =>
        Math.Abs(newtonMetres) < 0.9995 ? Say.With(newtonMetres * 1000.0, "mN m") : Say.With(newtonMetres, "N m");

    /// <summary>Torque at the axis.</summary>
    public static string AxisTorque(double newtonMetres) => Say.With(newtonMetres, "N m");

    /// <summary>A small angle at the axis: arcsec, arcmin from 10 arcmin on, degrees from 5 degrees on.</summary>
    public static string SmallAngle(double radians)
    {
        double arcseconds = Math.Abs(Arcseconds(radians));
        return arcseconds < 600.0 ? Say.With(Floor(Arcseconds(radians)), "arcsec")
            : arcseconds < 18000.0 ? Say.With(Arcseconds(radians) / 60.0, "arcmin")
            : Say.With(Degrees(radians), "deg");
    }

    /// <summary>A part of an offset with its sign: in arcsec, so that parts can be added up, but for a lost axis.</summary>
    public static string Offset(double radians)
    {
        double arcseconds = Arcseconds(radians);
        string text = Math.Abs(arcseconds) < 18000.0 ? Say.With(Floor(arcseconds), "arcsec") : Say.With(Degrees(radians), "deg");
        return text[0] is '-' || text.StartsWith("0 ", StringComparison.Ordinal) ? text : "+" + text;
    }

    public static string Angle(double radians) => Say.With(Degrees(radians), "deg", 4);

    public static string Rate(double radiansPerSecond) => Say.With(Degrees(radiansPerSecond), "deg/s");

    public static string Speed(double radiansPerSecond) => Say.With(Rpm(radiansPerSecond), "rpm");

    public static string Sidereal(double radiansPerSecond) => Say.Number(radiansPerSecond / SkyRates.MeanSiderealRadiansPerSecond) + " x sidereal";

    /// <summary>A span of time: ms below a tenth of a second, minutes from two minutes on.</summary>
    public static string Time(double seconds) => Math.Abs(seconds) switch
    {
        0.0 => "0 s",
        < 0.1 => Say.With(seconds * 1000.0, "ms"),
        < 120.0 => Say.With(seconds, "s"),
        < 7200.0 => Say.With(seconds / 60.0, "min"),
        _ => Say.With(seconds / 3600.0, "h"),
    };

    /// <summary>An inertia: g cm^2 for what sits on a motor's shaft.</summary>
    public static string Inertia(double kilogramSquareMetres) => Math.Abs(kilogramSquareMetres) < 1e-3
        ? Say.With(kilogramSquareMetres * 1e7, "g cm^2")
        : Say.With(kilogramSquareMetres, "kg m^2");

    public static string Energy(double joules) => Math.Abs(joules) < 1e4 ? Say.With(joules, "J") : Say.With(joules / 1000.0, "kJ");

    public static string Current(double amperesPeak) => $"{Say.With(amperesPeak, "A")} peak ({Say.With(amperesPeak / Math.Sqrt(2.0), "A")} rms)";

    public static string Percent(double share) => Say.Number(share * 100.0, share is > 0.99 and < 1.0 ? 3 : 2) + " %";

    public static string Celsius(double celsius) => Say.Number(Math.Round(celsius)) + " degC";

    // A thousandth of an arcsec is below anything a mount shows.
    private static double Floor(double arcseconds) => Math.Round(arcseconds, 3);
}
