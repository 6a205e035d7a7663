namespace AxisSim.Core.Sky;

/// <summary>Mechanical angles of the two axes, rad.</summary>
/// <remarks>
/// <para>Polar angle p: 0 with the declination axis horizontal, the counterweight to the east and the telescope to the west.
/// It grows as the axis tracks the sky, so at first the telescope side sinks and the counterweight rises; the counterweight hangs
/// lowest at p = -90 degrees. (Seen looking up the axis to the elevated pole, growing is counter-clockwise in the northern hemisphere and
/// clockwise in the southern.)</para>
/// <para>Declination angle d: 0 with the tube pointing at the equator, at p = 0 where the meridian crosses it above the horizon;
/// it grows towards the elevated pole, and through it beyond 90 degrees.</para>
/// <para>As unit vectors, with W the west point of the horizon, E the upper point of equator and meridian, P the elevated pole:
/// Out = W cos p - E sin p (declination axis, towards the telescope), F0 = E cos p + W sin p, Forward = F0 cos d + P sin d.
/// Heights above the horizon plane: W 0, E cos(latitude), P |sin(latitude)|.</para>
/// </remarks>
public readonly record struct MountPose(double PolarRadians, double DeclinationRadians);

/// <summary>Which of the two axes of the mount.</summary>
public enum MountAxis
{
    /// <summary>The polar (right ascension, hour) axis.</summary>
    Polar,

    /// <summary>The declination axis.</summary>
    Declination,
}

/// <summary>The two axes of a mount.</summary>
public static class MountAxes
{
    /// <summary>The other of the two.</summary>
    public static MountAxis Other(this MountAxis axis) => axis == MountAxis.Polar ? MountAxis.Declination : MountAxis.Polar;
}
