using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>Thins a long trace to what the pixels can show.</summary>
/// <remarks>
/// Per pixel column the first, least, greatest and last sample are kept, which draws the same pixels as all samples would:
/// U. Jugel, Z. Jerzak, G. Hackenbroich, V. Markl, "M4: a visualization-oriented time series data aggregation", PVLDB 7(10), 2014
/// (from memory). Points that then lie on a straight line within a fifth of a pixel are dropped.
/// A sample that is not finite breaks the line where no finite sample shares its column.
/// </remarks>
internal static class Decimation
{
    private const double StraightWithinPixels = 0.2;

    /// <summary>A line through the samples.</summary>
    /// <param name="frame">The plot area and its ranges.</param>
    /// <param name="x">Abscissae, ascending, in the unit of the axis.</param>
    /// <param name="y">Ordinates, in the unit of the axis.</param>
    public static List<DataPoint> Line(PlotFrame frame, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        List<DataPoint> kept = [];
        int i = First(frame, x);
        int end = Last(frame, x);
        while (i < end)
        {
            int column = Column(frame, x[i]);
            int first = -1, last = -1, least = -1, greatest = -1;
            for (; i < end && Column(frame, x[i]) == column; i++)
            {
                if (double.IsFinite(y[i]))
                {
                    first = first < 0 ? i : first;
                    last = i;
                    least = least < 0 || y[i] < y[least] ? i : least;
                    greatest = greatest < 0 || y[i] > y[greatest] ? i : greatest;
                }
            }

            if (first < 0)
            {
                kept.Add(DataPoint.Undefined);
                continue;
            }

            int previous = -1;
            foreach (int index in (ReadOnlySpan<int>)[first, Math.Min(least, greatest), Math.Max(least, greatest), last])
            {
                if (index != previous)
                {
                    kept.Add(new DataPoint(x[index], y[index]));
                    previous = index;
                }
            }
        }

        return Straightened(frame, kept);
    }

    /// <summary>The least and the greatest of several quantities per pixel column, as the edges of a band.</summary>
    public static (List<DataPoint> Upper, List<DataPoint> Lower) Band(PlotFrame frame, IReadOnlyList<double> x, params IReadOnlyList<double>[] quantities)
    {
        List<DataPoint> upper = [];
        List<DataPoint> lower = [];
        int i = First(frame, x);
        int end = Last(frame, x);
        while (i < end)
        {
            int start = i;
            int column = Column(frame, x[i]);
            double high = double.NegativeInfinity;
            double low = double.PositiveInfinity;
            for (; i < end && Column(frame, x[i]) == column; i++)
            {
                foreach (IReadOnlyList<double> y in quantities)
                {
                    if (double.IsFinite(y[i]))
                    {
                        high = Math.Max(high, y[i]);
                        low = Math.Min(low, y[i]);
                    }
                }
            }

            bool any = high >= low;
            upper.Add(any ? new DataPoint(x[start], high) : DataPoint.Undefined);
            lower.Add(any ? new DataPoint(x[start], low) : DataPoint.Undefined);
        }

        return (Straightened(frame, upper), Straightened(frame, lower));
    }

    private static int Column(PlotFrame frame, double x) => (int)Math.Floor((x - frame.X.From) * frame.PixelsPerX);

    // One sample beyond either edge is kept, so that the line leaves the plot area where the trace does.
    private static int First(PlotFrame frame, IReadOnlyList<double> x)
    {
        int i = 0;
        while (i + 1 < x.Count && x[i + 1] < frame.X.From)
        {
            i++;
        }

        return i;
    }

    private static int Last(PlotFrame frame, IReadOnlyList<double> x)
    {
        int i = x.Count;
        while (i - 2 >= 0 && x[i - 2] > frame.X.To)
        {
            i--;
        }

        return i;
    }

    /// <summary>Keeps a point where the cone of directions from the last kept point, a fifth of a pixel wide at each point, closes.</summary>
    private static List<DataPoint> Straightened(PlotFrame frame, List<DataPoint> points)
    {
        List<DataPoint> kept = new(points.Count);
        int anchor = -1;
        double low = 0, high = 0;
        for (int i = 0; i < points.Count; i++)
        {
            if (!points[i].IsDefined())
            {
                KeepPrevious(i);
                kept.Add(points[i]);
                anchor = -1;
                continue;
            }

            if (anchor < 0)
            {
                Anchor(i);
                continue;
            }

            (double dx, double dy) = Pixels(anchor, i);
            double slack = dx > 0 ? StraightWithinPixels / dx : 0;
            double slope = dx > 0 ? dy / dx : double.NaN;
            if (slope >= low && slope <= high)
            {
                low = Math.Max(low, slope - slack);
                high = Math.Min(high, slope + slack);
            }
            else
            {
                KeepPrevious(i);
                anchor = i - 1;
                (dx, dy) = Pixels(anchor, i);
                low = dx > 0 ? (dy - StraightWithinPixels) / dx : 1;
                high = dx > 0 ? (dy + StraightWithinPixels) / dx : -1;
            }
        }

        KeepPrevious(points.Count);
        return kept;

        void Anchor(int i)
        {
            kept.Add(points[i]);
            anchor = i;
            low = double.NegativeInfinity;
            high = double.PositiveInfinity;
        }

        void KeepPrevious(int i)
        {
            if (anchor >= 0 && i - 1 > anchor)
            {
                kept.Add(points[i - 1]);
            }
        }

        (double Dx, double Dy) Pixels(int from, int to) =>
            ((points[to].X - points[from].X) * frame.PixelsPerX, (points[to].Y - points[from].Y) * frame.PixelsPerY);
    }
}
