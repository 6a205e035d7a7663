namespace AxisSim.Core.Gearing;

/// <summary>Periodic error at the axis as a function of the worm's position.</summary>
/// <remarks>
/// <para><c>e(p) = A1 sin(N p + f1) + A2 sin(2 N p + f2) + A3 sin(p + f3)</c>, e in rad at the axis (positive: the axis is ahead), p the
/// turns of the worm as an axis angle (rad), N = wheel teeth / starts. Its slope <c>e'(p)</c> is the relative error of the axis rate;
/// a mechanism without loss has the reaction of the axis on the worm changed by the same factor <c>1 + e'</c>.</para>
/// <para>An eccentricity d of a wheel of pitch radius r makes a sine of amplitude <c>d/r</c> rad, once a turn of that wheel.</para>
/// </remarks>
public static class PeriodicErrorLaw
{
    /// <summary>Error at the axis, rad.</summary>
    /// <param name="error">Amplitudes and phases.</param>
    /// <param name="wormRatio">N, worm turns per axis turn.</param>
    /// <param name="position">p, rad.</param>
    public static double Value(PeriodicError error, double wormRatio, double position) =>
        Sine(error.FirstAmplitudeRadians, (wormRatio * position) + error.FirstPhaseRadians)
        + Sine(error.SecondAmplitudeRadians, (2.0 * wormRatio * position) + error.SecondPhaseRadians)
        + Sine(error.RunoutAmplitudeRadians, position + error.RunoutPhaseRadians);

    /// <summary>Slope of the error with the position, rad/rad.</summary>
    /// <param name="error">Amplitudes and phases.</param>
    /// <param name="wormRatio">N, worm turns per axis turn.</param>
    /// <param name="position">p, rad.</param>
    public static double Slope(PeriodicError error, double wormRatio, double position) =>
        Cosine(error.FirstAmplitudeRadians * wormRatio, (wormRatio * position) + error.FirstPhaseRadians)
        + Cosine(error.SecondAmplitudeRadians * 2.0 * wormRatio, (2.0 * wormRatio * position) + error.SecondPhaseRadians)
        + Cosine(error.RunoutAmplitudeRadians, position + error.RunoutPhaseRadians);

    /// <summary>Amplitude of the error of an eccentric wheel, rad: eccentricity over pitch radius.</summary>
    public static double EccentricityAmplitude(double eccentricityMetres, double pitchRadiusMetres) => eccentricityMetres / pitchRadiusMetres;

    // Most errors have one harmonic; the others are not worth their sines.
    private static double Sine(double amplitude, double angle) => amplitude == 0.0 ? 0.0 : amplitude * Math.Sin(angle);

    private static double Cosine(double amplitude, double angle) => amplitude == 0.0 ? 0.0 : amplitude * Math.Cos(angle);
}
