using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Tests.Unit.Plots.Drawing;

/// <summary>Thinning keeps what the eye can see.</summary>
public sealed class DecimationTests
{
    private static readonly PlotFrame s_frame = new(new Span(0, 10), new Span(-1, 1), 1000, 200);

    [Fact]
    public void A_straight_line_keeps_its_ends()
    {
        double[] x = [.. Enumerable.Range(0, 10_001).Select(i => i / 1000.0)];
        List<DataPoint> line = Decimation.Line(s_frame, x, [.. x.Select(v => (v / 10) - 0.5)]);
        Assert.Equal([new DataPoint(0, -0.5), new DataPoint(10, 0.5)], line);
    }

    [Fact]
    public void A_spike_of_one_sample_survives()
    {
        double[] x = [.. Enumerable.Range(0, 100_001).Select(i => i / 10_000.0)];
        double[] y = new double[x.Length];
        y[43_217] = 0.9;
        List<DataPoint> line = Decimation.Line(s_frame, x, y);
        Assert.Contains(new DataPoint(x[43_217], 0.9), line);
        Assert.InRange(line.Count, 3, 10);
    }

    [Fact]
    public void A_fast_oscillation_keeps_its_envelope_in_four_points_a_column_at_most()
    {
        double[] x = [.. Enumerable.Range(0, 100_001).Select(i => i / 10_000.0)];
        double[] y = [.. x.Select(v => Math.Sin(2 * Math.PI * 1000 * v))];
        List<DataPoint> line = Decimation.Line(s_frame, x, y);
        Assert.InRange(line.Count, 2000, 4 * 1001);

        // 10 samples a period, the nearest 18 deg from the crest: sin 72 deg = 0.951.
        Assert.Equal(0.951, line.Max(p => p.Y), 1e-3);
        Assert.Equal(-0.951, line.Min(p => p.Y), 1e-3);
    }

    [Fact]
    public void Every_sample_of_a_curve_lies_within_a_pixel_of_the_line()
    {
        double[] x = [.. Enumerable.Range(0, 20_001).Select(i => i / 2000.0)];
        double[] y = [.. x.Select(v => Math.Exp(-v) * Math.Cos(5 * v))];
        List<DataPoint> line = Decimation.Line(s_frame, x, y);
        Assert.InRange(line.Count, 20, 1000);
        int k = 0;
        for (int i = 0; i < x.Length; i++)
        {
            while (k + 2 < line.Count && line[k + 1].X < x[i])
            {
                k++;
            }

            double share = (x[i] - line[k].X) / (line[k + 1].X - line[k].X);
            double drawn = line[k].Y + (share * (line[k + 1].Y - line[k].Y));
            Assert.InRange(Math.Abs(drawn - y[i]) * s_frame.PixelsPerY, 0, 1.0);
        }
    }

    [Fact]
    public void A_gap_in_the_samples_is_a_gap_in_the_line()
    {
        double[] x = [.. Enumerable.Range(0, 101).Select(i => i / 10.0)];
        double[] y = [.. x.Select(v => v is > 4 and < 6 ? double.NaN : 0.1)];
        List<DataPoint> line = Decimation.Line(s_frame, x, y);
        Assert.Contains(line, p => !p.IsDefined());
        Assert.Equal([0, 4, 6, 10], line.Where(p => p.IsDefined()).Select(p => p.X));
    }

    [Fact]
    public void A_band_holds_all_quantities()
    {
        double[] x = [.. Enumerable.Range(0, 10_001).Select(i => i / 1000.0)];
        (List<DataPoint> upper, List<DataPoint> lower) = Decimation.Band(s_frame, x, [.. x.Select(v => Math.Sin(300 * v))], [.. x.Select(v => -0.5 * Math.Cos(300 * v))]);
        Assert.All(upper, p => Assert.InRange(p.Y, -1, 1));
        Assert.True(upper.Average(p => p.Y) > lower.Average(p => p.Y));
    }
}
