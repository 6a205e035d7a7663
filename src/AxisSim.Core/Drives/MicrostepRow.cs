namespace AxisSim.Core.Drives;

/// <summary>What a <see cref="MicrostepTable"/> knows of one microstep; four numbers side by side, so that one fetch takes them all.</summary>
internal struct MicrostepRow
{
    /// <summary>Cosine of its angle, -.</summary>
    public double Cos;

    /// <summary>Sine of its angle, -.</summary>
    public double Sin;

    /// <summary>Sum of the cosines of all microsteps of the turn before it.</summary>
    public double CosSum;

    /// <summary>Sum of the sines likewise.</summary>
    public double SinSum;
}
