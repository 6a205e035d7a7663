using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.TorqueSpeed;

namespace AxisSim.Plots;

/// <summary>The torque-speed plane of one motor: pull-out curves of both modes with the path of a move drawn through them.</summary>
public static class TorqueSpeedFigure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="curves">Curves and path; at least one speed or one point of the path.</param>
    /// <param name="title">Title.</param>
    /// <param name="totalRatio">Motor revolutions per axis revolution, for the scale of axis rates along the top.</param>
    /// <param name="sentence">A sentence under the title; may be empty.</param>
    /// <exception cref="ArgumentException">There is nothing to draw, a curve has another number of points than there are speeds, or the ratio is not positive.</exception>
    public static IFigure Create(TorqueSpeedCurves curves, string title, double totalRatio, string sentence = "")
    {
        ArgumentNullException.ThrowIfNull(curves);
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(sentence);
        if (!(totalRatio > 0) || !double.IsFinite(totalRatio))
        {
            throw new ArgumentException("The total ratio must be a positive number of motor revolutions per axis revolution.", nameof(totalRatio));
        }

        if (curves.SpeedsRadiansPerSecond.Count == 0 && curves.Path.Count == 0)
        {
            throw new ArgumentException("The torque-speed plane has neither curves nor a path: there is nothing to draw.", nameof(curves));
        }

        foreach (PullOutCurve curve in curves.Curves)
        {
            int speeds = curves.SpeedsRadiansPerSecond.Count;
            if (curve.ClosedFormNewtonMetres.Count != speeds || curve.SimulatedNewtonMetres.Count != speeds)
            {
                throw new ArgumentException(
                    $"A pull-out curve has {curve.ClosedFormNewtonMetres.Count} closed-form and {curve.SimulatedNewtonMetres.Count} simulated points for {speeds} speeds: all must agree.",
                    nameof(curves));
            }
        }

        Panel panel = PlanePanel.Create(curves, totalRatio);
        string description = (sentence.Length > 0 ? sentence + " " : string.Empty) + "Shows against motor speed: " + string.Join("; ", panel.Legend.Select(entry => entry.Text)) + ".";
        return new Sheet(title, sentence, description, [panel]);
    }
}
