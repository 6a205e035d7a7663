using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Recommendations;

/// <summary>The points of which none is beaten in everything at once, and the choice among them.</summary>
/// <remarks>
/// What counts: slew time, settling time, winding temperature (all low) and load factor (high). Balanced is the compromise nearest to the ideal point: with total time, temperature
/// and the inverse of the load factor each scaled to 0 (best of the front) to 1 (worst), the least root of the sum of squares.
/// Quietest takes no full-stepping, at most <see cref="QuietTimeFactor"/> times the total time of the fastest, and then the least product of slew current and slew rate:
/// sound grows with both; the product as their measure is a choice of ours, no source. Coolest counts temperatures within 1 K as alike. Ties go to the faster, then to the greater load factor, which is often at its cap, then to the cooler.
/// </remarks>
public static class ParetoFront
{
    /// <summary>Quietest may take that many times the total time of the fastest (a choice of ours).</summary>
    public const double QuietTimeFactor = 2.0;

    private const double AlikeKelvin = 1.0;

    /// <summary>The points that no other beats, fastest first.</summary>
    public static IReadOnlyList<FrontPoint> Of(IReadOnlyList<FrontPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return [.. points.Where(point => !points.Any(other => Beats(other, point))).OrderBy(point => point.TotalSeconds).ThenByDescending(point => point.LoadFactor).ThenBy(point => point.ContinuousCelsius)];
    }

    /// <summary>Whether a point is at least as good in everything and better in something.</summary>
    public static bool Beats(FrontPoint a, FrontPoint b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        bool asGood = a.SlewSeconds <= b.SlewSeconds && a.SettleSeconds <= b.SettleSeconds && a.ContinuousCelsius <= b.ContinuousCelsius && a.LoadFactor >= b.LoadFactor;
        return asGood && (a.SlewSeconds < b.SlewSeconds || a.SettleSeconds < b.SettleSeconds || a.ContinuousCelsius < b.ContinuousCelsius || a.LoadFactor > b.LoadFactor);
    }

    /// <summary>The best for an aim of points with at least the asked load factor; null when there is none.</summary>
    public static FrontPoint? Choose(IReadOnlyList<FrontPoint> points, RecommendAim aim, double loadFactor)
    {
        ArgumentNullException.ThrowIfNull(points);
        FrontPoint[] able = [.. points.Where(point => point.LoadFactor >= loadFactor - 1e-9).OrderBy(point => point.TotalSeconds).ThenByDescending(point => point.LoadFactor).ThenBy(point => point.ContinuousCelsius)];
        if (able.Length == 0)
        {
            return null;
        }

        switch (aim)
        {
            case RecommendAim.Fastest:
                return able[0];
            case RecommendAim.Coolest:
                double coolest = able.Min(point => point.ContinuousCelsius);
                return able.First(point => point.ContinuousCelsius <= coolest + AlikeKelvin);
            case RecommendAim.Quietest:
                FrontPoint[] quiet = [.. able.Where(point => double.IsPositiveInfinity(point.Settings.ChangeoverRadiansPerSecond))];
                double most = QuietTimeFactor * (quiet.Length > 0 ? quiet[0] : able[0]).TotalSeconds;
                return (quiet.Length > 0 ? quiet : able).Where(point => point.TotalSeconds <= most).MinBy(Sound);
            default:
                double Scaled(double value, Func<FrontPoint, double> of)
                {
                    double low = able.Min(of), high = able.Max(of);
                    return high > low ? (value - low) / (high - low) : 0.0;
                }

                return able.MinBy(point => Math.Pow(Scaled(point.TotalSeconds, p => p.TotalSeconds), 2)
                    + Math.Pow(Scaled(point.ContinuousCelsius, p => p.ContinuousCelsius), 2)
                    + Math.Pow(Scaled(1.0 / point.LoadFactor, p => 1.0 / p.LoadFactor), 2));
        }
    }

    private static double Sound(FrontPoint point) => point.Settings.SlewCurrentAmperes * point.Settings.SlewRateRadiansPerSecond;
}
