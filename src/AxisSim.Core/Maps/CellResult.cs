using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Maps;

/// <summary>What one cell of a map came to. A figure that was not asked for, or does not exist, is NaN.</summary>
/// <param name="End">How it ends.</param>
/// <param name="FailureSeconds">When sync or the clutch's grip was lost, s.</param>
/// <param name="SlewSeconds">Planned duration of the slew, s.</param>
/// <param name="SettleSeconds">Time from the end of the slew until the payload stays within the tolerance of its rest, s.</param>
/// <param name="ContinuousCelsius">The hottest winding temperature after slewing, tracking or holding without end, degrees Celsius.</param>
/// <param name="TorqueMargin">Least torque margin on the planned path, share of the pull-out torque; minus infinity where there is no pull-out torque.</param>
public readonly record struct CellResult(MoveEnd End, double FailureSeconds, double SlewSeconds, double SettleSeconds, double ContinuousCelsius, double TorqueMargin)
{
    /// <summary>A cell with an end and no figures.</summary>
    public static CellResult Bare(MoveEnd end) => new(end, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);

    /// <summary>Time of slew and settling together, s.</summary>
    public double DurationSeconds => SlewSeconds + SettleSeconds;

    /// <summary>The result of one axis.</summary>
    public static CellResult Of(BatchResult result, double margin) =>
        new(result.End, result.FailureSeconds, result.SlewSeconds, result.SettleSeconds, result.ContinuousCelsius, margin);

    /// <summary>The mount's result from those of two axes: the worse end, the earlier failure, the longer times, the hotter winding, the smaller margin.</summary>
    public CellResult With(in CellResult other) => new(
        End > other.End ? End : other.End,
        double.IsNaN(FailureSeconds) ? other.FailureSeconds : double.IsNaN(other.FailureSeconds) ? FailureSeconds : Math.Min(FailureSeconds, other.FailureSeconds),
        Math.Max(SlewSeconds, other.SlewSeconds),
        Math.Max(SettleSeconds, other.SettleSeconds),
        Math.Max(ContinuousCelsius, other.ContinuousCelsius),
        Math.Min(TorqueMargin, other.TorqueMargin));
}
