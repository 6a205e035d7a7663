namespace AxisSim.Core.Sky;

/// <summary>Mechanical angles of the two axes, rad.</summary>
/// <remarks>
/// Polar angle 0 with the declination axis horizontal and the counterweight to the east side; it grows as the axis tracks
/// the sky (in the northern hemisphere: clockwise seen from below the pole looking up the axis towards it).
/// Declination angle 0 with the tube pointing at the equator, growing towards the elevated pole, through it beyond 90 degrees.
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
