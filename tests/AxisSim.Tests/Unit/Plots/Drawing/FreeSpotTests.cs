using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Tests.Unit.Plots.Drawing;

/// <summary>Labels keep off the data.</summary>
public sealed class FreeSpotTests
{
    [Fact]
    public void A_label_avoids_the_line_that_crosses_its_place()
    {
        PlotFrame frame = new(new Span(0, 100), new Span(0, 100), 1000, 500);
        List<DataPoint> line = [new(0, 90), new(100, 90)];
        DataPoint spot = FreeSpot.Find(frame, [line], [50], 24, 100);

        // The box is 20 units high: 90 must lie outside of it, with the clearance of 7 px = 1.4 units.
        Assert.InRange(spot.Y, 10, 90 - 10 - 1.4);
        Assert.Equal(50, spot.X);
    }

    [Fact]
    public void A_label_takes_the_other_side_where_its_own_is_full()
    {
        PlotFrame frame = new(new Span(0, 100), new Span(0, 100), 1000, 500);
        List<DataPoint> wall = [new(51, 0), new(51, 100)];
        Assert.Equal(45, FreeSpot.Find(frame, [wall], [51, 45], 24, 100).X);
    }
}
