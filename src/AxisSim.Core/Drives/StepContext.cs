namespace AxisSim.Core.Drives;

/// <summary>One step of time as the laws of drive and motor see it; plan angles are those of the motor shaft.</summary>
/// <param name="StartSeconds">Start of the step, s.</param>
/// <param name="StepSeconds">Length of the step, s.</param>
/// <param name="PlanStartRadians">Planned shaft angle at the start, rad.</param>
/// <param name="PlanEndRadians">Planned shaft angle at the end, rad.</param>
internal readonly record struct StepContext(double StartSeconds, double StepSeconds, double PlanStartRadians, double PlanEndRadians)
{
    public double PlanRateRadiansPerSecond => (PlanEndRadians - PlanStartRadians) / StepSeconds;
}
