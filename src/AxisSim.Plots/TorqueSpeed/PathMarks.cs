using AxisSim.Core.Outcomes;
using AxisSim.Plots.Drawing;
using OxyPlot;

namespace AxisSim.Plots.TorqueSpeed;

/// <summary>The path of the planned move with the ends of its ramps.</summary>
internal static class PathMarks
{
    /// <summary>At the slew rate from this share of the greatest speed on: an S-curve arrives there without a corner.</summary>
    private const double AtSlewShare = 0.999;

    /// <summary>At rest below this share of the greatest speed: tracking after the move counts as its end.</summary>
    private const double AtRestShare = 0.01;

    private const double ApartPixels = 0.5;

    /// <summary>Adds the path and its four marked points.</summary>
    public static void Add(PlotModel model, PlotFrame frame, IReadOnlyList<NeedPoint> path, List<LegendEntry> legend, List<List<DataPoint>> drawn)
    {
        NeedPoint[] points = [.. path.Where(p => double.IsFinite(p.SpeedRadiansPerSecond) && double.IsFinite(p.TorqueNewtonMetres))];
        if (points.Length == 0)
        {
            return;
        }

        List<DataPoint> line = Thinned(frame, points);
        model.Series.Add(Marks.Line(Looks.Path, line));
        drawn.Add(line);
        legend.Add(new("torque that the move needs", Looks.Path));

        double top = points.Max(p => p.SpeedRadiansPerSecond);
        if (!(top > 0))
        {
            return;
        }

        int start = Array.FindIndex(points, p => p.SpeedRadiansPerSecond > AtRestShare * top);
        int stop = Array.FindLastIndex(points, p => p.SpeedRadiansPerSecond > AtRestShare * top);
        Mark(points[Math.Max(0, start - 1)], "start", Looks.PathStart);

        // The torque jumps where a ramp of constant acceleration ends: both marks stand on the ramp's side of the jump.
        int reached = Array.FindIndex(points, p => p.SpeedRadiansPerSecond >= AtSlewShare * top);
        int braking = Array.FindLastIndex(points, p => p.SpeedRadiansPerSecond >= AtSlewShare * top);
        Mark(points[reached], "slew rate reached", Looks.PathSlewReached);
        Mark(points[braking], "braking begins", Looks.PathBraking);
        Mark(points[Math.Min(points.Length - 1, stop + 1)], "stop", Looks.PathStop);

        void Mark(NeedPoint point, string text, Look look)
        {
            DataPoint at = ToPlane(point);
            model.Series.Add(Marks.Markers(look, [at]));
            drawn.Add([at]);
            legend.Add(new(text, look));
        }
    }

    private static DataPoint ToPlane(NeedPoint point) => new(PlaneScale.Rpm(point.SpeedRadiansPerSecond), point.TorqueNewtonMetres);

    private static List<DataPoint> Thinned(PlotFrame frame, NeedPoint[] points)
    {
        List<DataPoint> kept = [ToPlane(points[0])];
        for (int i = 1; i < points.Length; i++)
        {
            DataPoint next = ToPlane(points[i]);
            double apart = double.Hypot((next.X - kept[^1].X) * frame.PixelsPerX, (next.Y - kept[^1].Y) * frame.PixelsPerY);
            if (apart >= ApartPixels || i == points.Length - 1)
            {
                kept.Add(next);
            }
        }

        return kept;
    }
}
