namespace AxisSim.Core.Motion;

/// <summary>Resolution of an encoder on an axis.</summary>
public static class EncoderLaw
{
    /// <summary>Axis angle of one count, rad: a full turn over the counts of a turn; 0 without an encoder.</summary>
    public static double CountRadians(double countsPerRevolution) => countsPerRevolution > 0.0 ? 2.0 * Math.PI / countsPerRevolution : 0.0;
}
