namespace AxisSim.Core.Motors;

/// <summary>The small swing about steady running that decays slowest or grows fastest.</summary>
/// <param name="GrowthPerSecond">Rate at which its amplitude grows, 1/s; negative when it decays.</param>
/// <param name="FrequencyHertz">Its frequency, Hz; 0 when it does not swing.</param>
public readonly record struct SmallSwing(double GrowthPerSecond, double FrequencyHertz);

/// <summary>Neighbouring speeds at which small swings grow.</summary>
/// <param name="FromRadiansPerSecond">Lower edge, rad/s of the motor's shaft.</param>
/// <param name="ToRadiansPerSecond">Upper edge, rad/s; the greatest speed looked at, where they grow there still.</param>
/// <param name="WorstRadiansPerSecond">Speed at which they grow fastest, rad/s.</param>
/// <param name="Worst">The swing there; null where at none of the speeds running was found that repeats from step to step: there the rotor is swung too far for that.</param>
public sealed record SwingBand(double FromRadiansPerSecond, double ToRadiansPerSecond, double WorstRadiansPerSecond, SmallSwing? Worst);
