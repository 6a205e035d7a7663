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
            throw new ArgumentException("The trace is empty: there is nothing to draw. Simulate the move first.", nameof(trace));
        }

        Trace = trace;
        Outcome = outcome;
        Time = Span.Of(trace.FromSeconds, trace.ToSeconds);
        Middle = [.. trace.FromSeconds.Zip(trace.ToSeconds, (from, to) => 0.5 * (from + to))];
        TraceRange planned = trace[TraceQuantity.PlannedAngleRadians];
        Direction = planned.Mean[^1] < planned.Mean[0] ? -1.0 : 1.0;
    }

    /// <summary>The run, stretch by stretch.</summary>
    public Trace Trace { get; }

    /// <summary>What came of it.</summary>
    public AxisOutcome Outcome { get; }

    /// <summary>Range of the shared time axis, s.</summary>
    public Span Time { get; }

    /// <summary>Middle of each stretch, s.</summary>
    public double[] Middle { get; }

    /// <summary>1 when the axis moves towards greater angles, -1 otherwise: torques are shown along the motion.</summary>
    public double Direction { get; }

    /// <summary>What went wrong and when, s; null when nothing did.</summary>
    public (string Text, double Seconds)? Event =>
        Outcome.Loss is LossOfSync loss ? ("sync lost", loss.TimeSeconds)
        : Outcome.ClutchSlipSeconds is double slip ? ("clutch slips", slip)
        : null;

    /// <summary>A quantity over the whole run, times a factor.</summary>
    public Stroke Stroke(TraceQuantity quantity, double factor = 1.0) => Moves.Stroke.Of(Trace, quantity, factor);

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
