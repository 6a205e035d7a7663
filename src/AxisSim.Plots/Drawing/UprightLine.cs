using OxyPlot;
using OxyPlot.Annotations;

namespace AxisSim.Plots.Drawing;

/// <summary>A vertical line across the plot in a look of ours (OxyPlot's own line annotation has only its own dashes).</summary>
internal sealed class UprightLine : Annotation
{
    /// <summary>Where, in the unit of the horizontal axis.</summary>
    public required double X { get; init; }

    /// <summary>Colour, width and dash.</summary>
    public required Look Look { get; init; }

    /// <inheritdoc/>
    public override void Render(IRenderContext rc)
    {
        OxyRect area = PlotModel.PlotArea;
        double x = Transform(new DataPoint(X, 0)).X;
        if (x >= area.Left && x <= area.Right)
        {
            rc.DrawLine(
                [new ScreenPoint(x, area.Top), new ScreenPoint(x, area.Bottom)],
                Look.Colour,
                Look.Width,
                EdgeRenderingMode.PreferGeometricAccuracy,
                Marks.DashArray(Look),
                LineJoin.Bevel);
        }
    }
}
