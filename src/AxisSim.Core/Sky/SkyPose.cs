namespace AxisSim.Core.Sky;

/// <summary>Side of the pier on which the telescope stands, which names one of the two mechanical poses for each point of the sky.</summary>
/// <remarks>
/// It is the side while the target is within six hours of the meridian; farther round (below the pole) the same pose has carried the telescope
/// over to the other side and keeps its name.
/// </remarks>
public enum PierSide
{
    /// <summary>Telescope east of the pier: the usual one for targets west of the meridian.</summary>
    East,

    /// <summary>Telescope west of the pier: the usual one for targets east of the meridian.</summary>
    West,
}

/// <summary>A point of the sky as a mount of a given side points at it.</summary>
/// <param name="HourAngleRadians">Hour angle, rad, positive west, from -pi to pi.</param>
/// <param name="DeclinationRadians">Declination, rad, positive north.</param>
/// <param name="Side">Side of the pier.</param>
public readonly record struct SkyPoint(double HourAngleRadians, double DeclinationRadians, PierSide Side);

/// <summary>From the sky to the mechanical angles of a German equatorial mount, and back.</summary>
/// <remarks>
/// <para>With H the hour angle and D the declination counted from the equator to the elevated pole (in the south the declination with its
/// sign changed): telescope west <c>p = H, d = D</c>; telescope east <c>p = H - pi, d = pi - D</c>. For targets on the usual side of the
/// meridian both give a p between -pi and 0: counterweight down.</para>
/// <para>Signs and directions as in <see cref="MountPose"/>. Valid for a mount aimed at the pole with axes at right angles; no refraction.</para>
/// </remarks>
public static class SkyPose
{
    /// <summary>Mechanical angles for a point of the sky.</summary>
    /// <param name="hourAngleRadians">Hour angle, rad, positive west; taken into -pi to pi.</param>
    /// <param name="declinationRadians">Declination, rad, positive north, -pi/2 to pi/2.</param>
    /// <param name="side">Side of the pier.</param>
    /// <param name="latitudeRadians">Latitude, rad; only its sign counts (which pole is elevated; 0 counts as north).</param>
    public static MountPose ToMechanical(double hourAngleRadians, double declinationRadians, PierSide side, double latitudeRadians)
    {
        double hourAngle = Math.IEEERemainder(hourAngleRadians, 2.0 * Math.PI);
        double fromEquator = latitudeRadians < 0.0 ? -declinationRadians : declinationRadians;
        return side == PierSide.West
            ? new(hourAngle, fromEquator)
            : new(hourAngle - Math.PI, Math.PI - fromEquator);
    }

    /// <summary>Point of the sky at which a pose aims.</summary>
    /// <param name="pose">Mechanical angles, of any number of turns.</param>
    /// <param name="latitudeRadians">Latitude, rad; only its sign counts.</param>
    public static SkyPoint ToSky(MountPose pose, double latitudeRadians)
    {
        (double sin, double cos) = Math.SinCos(pose.DeclinationRadians);
        bool west = cos >= 0.0;
        double hourAngle = Math.IEEERemainder(west ? pose.PolarRadians : pose.PolarRadians + Math.PI, 2.0 * Math.PI);
        double fromEquator = Math.Atan2(sin, Math.Abs(cos));
        return new(hourAngle, latitudeRadians < 0.0 ? -fromEquator : fromEquator, west ? PierSide.West : PierSide.East);
    }

    /// <summary>Sine of the altitude at which a pose aims: <c>sin(latitude) sin D + cos(latitude) cos D cos H</c>, H hour angle, D declination; spherical astronomy, no refraction.</summary>
    /// <param name="pose">Mechanical angles, of any number of turns.</param>
    /// <param name="latitudeRadians">Latitude, rad; negative south.</param>
    public static double SineOfAltitude(MountPose pose, double latitudeRadians)
    {
        SkyPoint sky = ToSky(pose, latitudeRadians);
        return (Math.Sin(latitudeRadians) * Math.Sin(sky.DeclinationRadians)) + (Math.Cos(latitudeRadians) * Math.Cos(sky.DeclinationRadians) * Math.Cos(sky.HourAngleRadians));
    }
}
