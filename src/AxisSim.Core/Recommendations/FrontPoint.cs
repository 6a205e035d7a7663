using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Recommendations;

/// <summary>Settings with what they give in the move of the trade-off, the axis moving alone.</summary>
/// <param name="Settings">The settings.</param>
/// <param name="SlewSeconds">Duration of the slew, s.</param>
/// <param name="SettleSeconds">Settling after it, s.</param>
/// <param name="LoadFactor">Load factor in the hardest cases: worst corner of the tolerances, hardest moves.</param>
/// <param name="ContinuousCelsius">The hottest winding temperature after slewing, tracking or holding without end, degrees Celsius.</param>
public sealed record FrontPoint(AxisSettings Settings, double SlewSeconds, double SettleSeconds, double LoadFactor, double ContinuousCelsius)
{
    /// <summary>Slew with settling, s.</summary>
    public double TotalSeconds => SlewSeconds + SettleSeconds;
}
