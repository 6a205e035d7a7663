using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>What the electrical side did in the last step, all means over the step.</summary>
internal readonly record struct MotorReading(
    double CurrentA,
    double CurrentB,
    double ElectricalWatts,
    double CopperWatts,
    double MagneticJoules,
    double BusVolts,
    double SupplyAmperes,
    bool Saturated);

/// <summary>
/// The seam behind which a kind of motor keeps its electrical law. Implementations are structs, so that the
/// step is compiled for each of them without a virtual call.
/// </summary>
internal interface IMotorLaw
{
    /// <summary>Advances the electrical state over one step and returns the mean torque on the rotor, N m.</summary>
    /// <param name="step">The step.</param>
    /// <param name="rotorMidRadians">Rotor angle in the middle of the step, rad.</param>
    /// <param name="speedMidRadiansPerSecond">Rotor speed extrapolated to the middle of the step, rad/s.</param>
    double Advance(in StepContext step, double rotorMidRadians, double speedMidRadiansPerSecond);

    /// <summary>Once per block of steps: slow changes such as the winding's resistance.</summary>
    void EndBlock(double blockSeconds);

    /// <summary>Readings of the last step.</summary>
    MotorReading Reading { get; }

    /// <summary>False once any electrical state is not a finite number.</summary>
    bool IsFinite { get; }
}
