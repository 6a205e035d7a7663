using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>No motor: the rotor moves only by what is connected to it.</summary>
internal struct NoMotor : IMotorLaw
{
    public readonly MotorReading Reading => default;

    public readonly bool IsFinite => true;

    public readonly double Advance(in StepContext step, double rotorMidRadians, double speedMidRadiansPerSecond) => 0.0;

    public readonly void EndBlock(double blockSeconds)
    {
    }
}
