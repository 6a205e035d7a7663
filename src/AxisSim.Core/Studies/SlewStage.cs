using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Studies;

/// <summary>The move of a scenario at a share of its slew rate, as one axis makes it.</summary>
/// <param name="Share">Share of the slew rate, 0 to 1; the ramp takes the same time.</param>
/// <param name="SlewRateRadiansPerSecond">Slew rate then, rad/s.</param>
/// <param name="AccelerationRadiansPerSecondSquared">Greatest acceleration then, rad/s2.</param>
/// <param name="OwnSeconds">Time that this axis is on its way, s; 0 when it does not move.</param>
/// <param name="Outcome">What comes of it.</param>
public sealed record SlewStage(double Share, double SlewRateRadiansPerSecond, double AccelerationRadiansPerSecondSquared, double OwnSeconds, AxisOutcome Outcome);
