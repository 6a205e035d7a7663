using OxyPlot.Axes;

namespace AxisSim.Plots.Drawing;

/// <summary>A logarithmic axis with labels at <see cref="Ticks"/>: OxyPlot's own leaves a range within one decade almost bare.</summary>
internal sealed class DecadeAxis : LogarithmicAxis
{
    /// <summary>Greatest number of labels.</summary>
    public required int MostTicks { get; init; }

    /// <inheritdoc/>
    public override void GetTickValues(out IList<double> majorLabelValues, out IList<double> majorTickValues, out IList<double> minorTickValues)
    {
        double[] ticks = [.. Ticks.Logarithmic(ClipMinimum, ClipMaximum, MostTicks)];
        (majorLabelValues, majorTickValues, minorTickValues) = (ticks, ticks, []);
    }
}
