using OxyPlot;

namespace AxisSim.Plots.Drawing;

/// <summary>Finds where a label hides no data.</summary>
internal static class FreeSpot
{
    private const double StepPixels = 6;
    private const double ClearancePixels = 7;

    /// <summary>The height at which a box on one of two sides of a vertical line meets least of the data.</summary>
    /// <param name="frame">Ranges and size of the plot area.</param>
    /// <param name="data">Lines and markers, in the units of the axes.</param>
    /// <param name="centres">Abscissae at which the box may be centred, the best first.</param>
    /// <param name="width">Width of the box, px.</param>
    /// <param name="height">Height of the box, px.</param>
    public static DataPoint Find(PlotFrame frame, IReadOnlyList<List<DataPoint>> data, ReadOnlySpan<double> centres, double width, double height)
    {
        List<ScreenPoint> dots = Dots(frame, data);
        DataPoint best = new(centres[0], 0.5 * (frame.Y.From + frame.Y.To));
        int fewest = int.MaxValue;
        foreach (double centre in centres)
        {
            double x = (centre - frame.X.From) * frame.PixelsPerX;
            if (x - (width / 2) < 0 || x + (width / 2) > frame.WidthPixels)
            {
                continue;
            }

            // From the top down: the upper part of a plot is read first.
            for (double top = ClearancePixels; top + height < frame.HeightPixels - ClearancePixels; top += StepPixels)
            {
                double bottom = frame.HeightPixels - top - height;
                int met = dots.Count(dot =>
                    Math.Abs(dot.X - x) < (width / 2) + ClearancePixels && dot.Y > bottom - ClearancePixels && dot.Y < bottom + height + ClearancePixels);
                if (met < fewest)
                {
                    fewest = met;
                    best = new DataPoint(centre, frame.Y.From + ((bottom + (height / 2)) / frame.PixelsPerY));
                }
            }
        }

        return best;
    }

    /// <summary>Points every few pixels along the lines, px from the lower left corner.</summary>
    private static List<ScreenPoint> Dots(PlotFrame frame, IReadOnlyList<List<DataPoint>> data)
    {
        List<ScreenPoint> dots = [];
        foreach (List<DataPoint> line in data)
        {
            ScreenPoint? previous = null;
            foreach (DataPoint point in line)
            {
                if (!point.IsDefined())
                {
                    previous = null;
                    continue;
                }

                ScreenPoint here = new((point.X - frame.X.From) * frame.PixelsPerX, (point.Y - frame.Y.From) * frame.PixelsPerY);
                ScreenPoint from = previous ?? here;
                int steps = Math.Clamp((int)Math.Ceiling(from.DistanceTo(here) / StepPixels), 1, 1000);
                for (int i = 1; i <= steps; i++)
                {
                    dots.Add(from + ((here - from) * ((double)i / steps)));
                }

                previous = here;
            }
        }

        return dots;
    }
}
