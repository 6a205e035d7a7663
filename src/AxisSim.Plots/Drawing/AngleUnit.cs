namespace AxisSim.Plots.Drawing;

/// <summary>A unit to show angles in.</summary>
/// <param name="Name">As written on an axis.</param>
/// <param name="PerRadian">How many make a radian.</param>
internal sealed record AngleUnit(string Name, double PerRadian)
{
    public const double DegreesPerRadian = 180.0 / Math.PI;

    /// <summary>Seconds of arc.</summary>
    public static AngleUnit ArcSeconds { get; } = new("arcsec", 3600.0 * DegreesPerRadian);

    /// <summary>Minutes of arc.</summary>
    public static AngleUnit ArcMinutes { get; } = new("arcmin", 60.0 * DegreesPerRadian);

    /// <summary>Degrees.</summary>
    public static AngleUnit Degrees { get; } = new("deg", DegreesPerRadian);

    /// <summary>The unit in which a greatest angle reads well: below 10 arcmin in arcsec, below 5 deg in arcmin.</summary>
    public static AngleUnit For(double greatestRadians)
    {
        double minutes = Math.Abs(greatestRadians) * ArcMinutes.PerRadian;
        return minutes >= 300.0 ? Degrees : minutes >= 10.0 ? ArcMinutes : ArcSeconds;
    }
}
