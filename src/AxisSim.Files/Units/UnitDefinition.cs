namespace AxisSim.Files.Units;

/// <summary>Where a rate is meant: an axis, the motor's shaft, or the motor's shaft counted in full steps.</summary>
internal enum RatePlace
{
    /// <summary>At the axis, rad/s.</summary>
    Axis,

    /// <summary>At the motor's shaft, rad/s.</summary>
    Motor,

    /// <summary>At the motor's shaft, full steps per second.</summary>
    MotorSteps,

    /// <summary>At the motor's shaft, microsteps per second.</summary>
    Pulses,
}

/// <summary>A unit of the small table: SI value = number * Multiply / Divide + Offset.</summary>
/// <remarks>
/// Two factors instead of one, because a division by 1000 is rounded once and gives the double nearest to the decimal that was
/// written, where a multiplication by 0.001 is rounded twice.
/// </remarks>
internal sealed record UnitDefinition(string Spelling, double Multiply, double Divide = 1.0, double Offset = 0.0, RatePlace Place = RatePlace.Axis)
{
    /// <summary>A number in this unit as SI.</summary>
    public double ToSi(double number) => (number * Multiply / Divide) + Offset;

    /// <summary>An SI value as a number in this unit.</summary>
    public double FromSi(double si) => (si - Offset) * Divide / Multiply;
}
