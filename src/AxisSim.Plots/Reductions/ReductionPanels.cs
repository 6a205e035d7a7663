using AxisSim.Core.Reductions;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using OxyPlot;

namespace AxisSim.Plots.Reductions;

/// <summary>The four panels of the lesson on the reduction.</summary>
internal static class ReductionPanels
{
    private const double Height = 230;

    /// <summary>Room beyond the first and last reduction, and above and below what is drawn, as factors.</summary>
    private const double ReductionRoom = 1.12;
    private const double ValueRoom = 1.3;

    /// <summary>A panel shows at most this many decades below its greatest value: a point far below would press all else together.</summary>
    private const double MostDecades = 6.0;

    /// <summary>The inertia match is shown when it is no further beyond the points than this factor.</summary>
    private const double FarthestMatch = 10.0;

    /// <summary>A line of what was simulated, or of a closed form, which goes on to the inertia match.</summary>
    private sealed record Line(string Label, Look Look, Func<ReductionPoint, double>? Simulated, Func<ReductionFacts, double>? Paper = null)
    {
        public IEnumerable<(double Reduction, double Value)> Points(ReductionPicture picture) => Simulated is { } simulated
            ? picture.Result.Points.Select(point => (point.Facts.TotalReduction, simulated(point)))
            : picture.Result.Points.Select(point => point.Facts).Concat(Match(picture)).OrderBy(facts => facts.TotalReduction).Select(facts => (facts.TotalReduction, Paper!(facts)));
    }

    /// <summary>Makes the panels, from above: rate, acceleration, torque, resolution.</summary>
    public static IReadOnlyList<Panel> Create(ReductionPicture picture)
    {
        const double degrees = AngleUnit.DegreesPerRadian;
        double arcseconds = AngleUnit.ArcSeconds.PerRadian;
        return
        [
            Panel(picture, "Greatest slew rate", "Rate, deg/s", null, picture.AskedRateRadiansPerSecond * degrees, "in the file",
                new("simulated", Looks.ReductionSimulated, point => point.SafeRateRadiansPerSecond * degrees),
                new("closed form", Looks.ReductionPaper, null, facts => facts.RateRadiansPerSecond * degrees),
                new("pulse limit", Looks.ReductionPulses, null, facts => facts.PulseLimitRadiansPerSecond * degrees)),
            Panel(picture, "Greatest acceleration", "Accel., deg/s\u00b2", null, picture.AskedAccelerationRadiansPerSecondSquared * degrees, "in the file",
                new(SimulatedAcceleration(picture), Looks.ReductionSimulated, point => point.SafeAccelerationRadiansPerSecondSquared * degrees),
                new("closed form", Looks.ReductionPaper, null, facts => facts.AccelerationRadiansPerSecondSquared * degrees)),
            Panel(picture, "Torque at the axis", "Torque, N m", null, picture.Result.Own.Facts.NeededAtSlewNewtonMetres, "needed at the slew rate",
                new("at the slew rate, simulated", Looks.ReductionSimulated, point => point.TorqueAtSlewNewtonMetres),
                new("at rest", Looks.ReductionPaper, null, facts => facts.TorqueAtRestNewtonMetres)),
            Panel(picture, "Resolution", "Angle, arcsec", "Total reduction, motor turns per axis turn", picture.ToleranceRadians * arcseconds, "settling band",
                new("full step", Looks.ReductionPaper, null, facts => facts.FullStepRadians * arcseconds),
                new("microstep", Looks.ReductionSimulated, null, facts => facts.MicrostepRadians * arcseconds),
                new("friction lag", Looks.ReductionPulses, null, facts => facts.FrictionLagRadians * arcseconds)),
        ];
    }

    private static Panel Panel(ReductionPicture picture, string heading, string title, string? below, double level, string levelLabel, params Line[] lines)
    {
        double[] reductions = [.. picture.Result.Points.Select(point => point.Facts).Concat(Match(picture)).Select(facts => facts.TotalReduction)];
        double[] values = [.. lines.SelectMany(line => line.Points(picture)).Select(point => point.Value).Append(level).Where(CanBeDrawn)];
        Span x = new(reductions.Min() / ReductionRoom, reductions.Max() * ReductionRoom);
        double top = (values.Length > 0 ? values.Max() : 1.0) * ValueRoom;
        Span y = new(Math.Max(top * Math.Pow(10.0, -MostDecades), (values.Length > 0 ? values.Min() : 1.0) / ValueRoom), top);
        PlotModel model = Drawing.Panel.NewModel(new PlotFrame(x, y, Sheet.PlotWidth, Height), title, below, logarithmicX: true, logarithmicY: true);
        List<LegendEntry> legend = [];
        if (CanBeDrawn(level))
        {
            model.Series.Add(Marks.Line(Looks.ReductionLevel, [new DataPoint(x.From, level), new DataPoint(x.To, level)]));
        }

        foreach (Line line in lines)
        {
            List<DataPoint> points = [.. line.Points(picture).Select(point => Point(point.Reduction, point.Value, y))];
            if (points.Any(point => point.IsDefined()))
            {
                model.Series.Add(Marks.Line(line.Look, points));
                legend.Add(new(line.Label, line.Look));
            }
        }

        if (CanBeDrawn(level))
        {
            legend.Add(new(levelLabel, Looks.ReductionLevel));
        }

        model.Annotations.Add(Marks.Upright(Looks.ReductionOwn, picture.Result.Own.Facts.TotalReduction));
        legend.Add(new("this file", Looks.ReductionOwn));
        double best = picture.Result.Match.OptimumRatio;
        if (best >= x.From && best <= x.To)
        {
            model.Annotations.Add(Marks.Upright(Looks.ReductionMatched, best));
            legend.Add(new("inertia-matched", Looks.ReductionMatched));
        }

        return new Panel(heading, legend, model, Height);
    }

    /// <summary>The closed forms at the inertia match, when it lies near enough to be drawn.</summary>
    private static IEnumerable<ReductionFacts> Match(ReductionPicture picture)
    {
        double[] reductions = [.. picture.Result.Points.Select(point => point.Facts.TotalReduction)];
        return picture.Result.AtOptimum is { } best && best.TotalReduction <= FarthestMatch * reductions.Max() && best.TotalReduction >= reductions.Min() / FarthestMatch ? [best] : [];
    }

    // Where no acceleration fails, the line is flat, for no ramp is shorter than a swing of the train.
    private static string SimulatedAcceleration(ReductionPicture picture) =>
        picture.Result.Points.Any(point => double.IsFinite(point.SafeAccelerationRadiansPerSecondSquared) && point.AccelerationFailure is null) ? "simulated; flat: end of the search" : "simulated";

    private static bool CanBeDrawn(double value) => value > 0.0 && double.IsFinite(value);

    private static DataPoint Point(double reduction, double value, Span y) => CanBeDrawn(value) && value >= y.From ? new DataPoint(reduction, value) : DataPoint.Undefined;
}
