namespace AxisSim.Tests.Published;

/// <summary>Geometry of a worm's pitch cylinder.</summary>
internal static class WormGeometry
{
    /// <summary>Lead angle, rad: <c>atan(lead/(pi D))</c>, lead = starts times axial pitch, D = pitch diameter.</summary>
    public static double LeadAngle(double leadMetres, double pitchDiameterMetres) => Math.Atan(leadMetres / (Math.PI * pitchDiameterMetres));

    /// <summary>Normal pressure angle, rad, from that in the axial plane: <c>tan pn = tan p cos L</c>.</summary>
    public static double NormalPressureAngle(double axialPressureAngleRadians, double leadAngleRadians) =>
        Math.Atan(Math.Tan(axialPressureAngleRadians) * Math.Cos(leadAngleRadians));

    /// <summary>Sliding speed of the flanks, m/s: the worm's pitch-line speed over <c>cos L</c>.</summary>
    public static double SlidingSpeed(double wormSpeedRadiansPerSecond, double pitchDiameterMetres, double leadAngleRadians) =>
        wormSpeedRadiansPerSecond * pitchDiameterMetres / (2.0 * Math.Cos(leadAngleRadians));
}
