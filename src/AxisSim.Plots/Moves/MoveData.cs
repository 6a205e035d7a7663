using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;

namespace AxisSim.Plots.Moves;

/// <summary>A trace with its outcome, checked, and what all panels of the sheet share.</summary>
internal sealed class MoveData
{
    /// <summary>Checks the trace.</summary>
    public MoveData(Trace trace, AxisOutcome outcome)
    {
        if (trace.Count == 0)
        {
            throw new ArgumentException("The trace has no samples: there is nothing to draw. Simulate the move first.", nameof(trace));
        }

        (string Name, int Count)[] lists =
        [
            (nameof(trace.PlannedAngleRadians), trace.PlannedAngleRadians.Count),
            (nameof(trace.PlannedRateRadiansPerSecond), trace.PlannedRateRadiansPerSecond.Count),
            (nameof(trace.ActualRateRadiansPerSecond), trace.ActualRateRadiansPerSecond.Count),
            (nameof(trace.AxisErrorRadians), trace.AxisErrorRadians.Count),
            (nameof(trace.PayloadErrorRadians), trace.PayloadErrorRadians.Count),
            (nameof(trace.SettleErrorRadians), trace.SettleErrorRadians.Count),
            (nameof(trace.LoadAngleRadians), trace.LoadAngleRadians.Count),
            (nameof(trace.MotorTorqueNewtonMetres), trace.MotorTorqueNewtonMetres.Count),
            (nameof(trace.NeededTorqueNewtonMetres), trace.NeededTorqueNewtonMetres.Count),
            (nameof(trace.AvailableTorqueNewtonMetres), trace.AvailableTorqueNewtonMetres.Count),
            (nameof(trace.PhaseACurrentAmperes), trace.PhaseACurrentAmperes.Count),
            (nameof(trace.PhaseBCurrentAmperes), trace.PhaseBCurrentAmperes.Count),
            (nameof(trace.SaturationShare), trace.SaturationShare.Count),
            (nameof(trace.FullStepping), trace.FullStepping.Count),
        ];
        foreach ((string name, int count) in lists)
        {
            if (count != trace.Count)
            {
                throw new ArgumentException($"The trace has {trace.Count} times but {count} samples of {name}: all its lists must be of one length.", nameof(trace));
            }
        }

        Trace = trace;
        Outcome = outcome;
        Time = Span.Of(trace.TimeSeconds);
        double way = trace.PlannedAngleRadians[^1] - trace.PlannedAngleRadians[0];
        Direction = way < 0 ? -1.0 : 1.0;
    }

    /// <summary>The samples.</summary>
    public Trace Trace { get; }

    /// <summary>What came of them.</summary>
    public AxisOutcome Outcome { get; }

    /// <summary>Range of the shared time axis, s.</summary>
    public Span Time { get; }

    /// <summary>1 when the axis moves towards greater angles, -1 otherwise: torques are shown along the motion.</summary>
    public double Direction { get; }

    /// <summary>What went wrong and when, s; null when nothing did.</summary>
    public (string Text, double Seconds)? Event =>
        Outcome.Loss is LossOfSync loss ? ("sync lost", loss.TimeSeconds)
        : Outcome.ClutchSlipSeconds is double slip ? ("clutch slips", slip)
        : null;

    /// <summary>Values times a factor.</summary>
    public static double[] Scaled(IReadOnlyList<double> values, double factor)
    {
        double[] scaled = new double[values.Count];
        for (int i = 0; i < scaled.Length; i++)
        {
            scaled[i] = values[i] * factor;
        }

        return scaled;
    }
}
