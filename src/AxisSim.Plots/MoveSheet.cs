using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Moves;

namespace AxisSim.Plots;

/// <summary>The sheet of one move of one axis: rate, torque, load angle, current, saturation and error on one time axis, and a close-up.</summary>
/// <remarks>
/// Torques are shown along the planned motion, so that a positive need opposes it in either direction. The close-up shows
/// the settling, or the loss of sync when there is one.
/// </remarks>
public static class MoveSheet
{
    /// <summary>Makes the figure.</summary>
    /// <param name="trace">The run, stretch by stretch; at least one.</param>
    /// <param name="outcome">What came of the run.</param>
    /// <param name="title">Title.</param>
    /// <param name="verdict">The verdict in a sentence, drawn under the title; broken into lines as needed.</param>
    /// <exception cref="ArgumentException">The trace is empty.</exception>
    public static IFigure Create(Trace trace, AxisOutcome outcome, string title, string verdict)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(verdict);
        MoveData data = new(trace, outcome);
        List<Panel> panels =
        [
            RatePanel.Create(data),
            TorquePanel.Create(data),
            LoadAnglePanel.Create(data),
            CurrentPanel.Create(data),
            SaturationPanel.Create(data),
            ErrorPanel.Create(data),
        ];
        Panel? closeUp = outcome.Loss is LossOfSync loss ? LossPanel.Create(data, loss) : SettlePanel.Create(data);
        if (closeUp is not null)
        {
            panels.Add(closeUp);
        }

        string description = verdict.ReplaceLineEndings(" ") + " Panels from above: " + string.Join("; ", panels.Select(panel => panel.Heading)) + ".";
        return new Sheet(title, verdict, description, panels);
    }
}
