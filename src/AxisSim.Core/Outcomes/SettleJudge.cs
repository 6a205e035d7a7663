using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>When an axis counts as settled after a slew.</summary>
/// <param name="RestSeconds">Time at the end of the run over which the final rest is averaged, s.</param>
/// <param name="DwellSeconds">Settled means in the band for this long at least, s.</param>
/// <param name="ToleranceRadians">Half the band, rad.</param>
internal readonly record struct SettleJudge(double RestSeconds, double DwellSeconds, double ToleranceRadians)
{
    private const double RestWindowSeconds = 0.2;

    // While tracking, two full steps or so pass in it and their ripple averages out.
    private const double TrackingWindowSeconds = 2.0;

    /// <summary>In the band for this long at least, s; or for three periods of a flexible payload, or two full steps of tracking, if longer.</summary>
    private const double LeastDwellSeconds = 1.0;

    public static SettleJudge Of(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        bool tracks = setup.Tracks(axis);
        double swings = model.Flexible is { } tube ? 3.0 / tube.FrequencyHertz : 0.0;
        double steps = tracks ? 2.0 * model.Motor.FullStepRadians / model.Train.TotalRatio / SkyRates.MeanSiderealRadiansPerSecond : 0.0;
        return new SettleJudge(
            Math.Min(tracks ? TrackingWindowSeconds : RestWindowSeconds, 0.25 * setup.Move.ObserveSeconds),
            Math.Max(LeastDwellSeconds, Math.Max(swings, steps)),
            setup.Move.SettleToleranceRadians);
    }

    /// <summary>An empty trail of errors that keeps what this judge asks for.</summary>
    public SettleTrail Trail(double stepSeconds) => new(stepSeconds, RestSeconds);

    /// <summary>Time from the first error until all later ones lie within a band about a level, s; null when they do not, or not for long enough to be sure.</summary>
    public double? Within(SettleTrail errors, double level, double tolerance) =>
        errors.Time(level, tolerance) is { } time && time <= errors.Seconds - DwellSeconds ? time : null;
}
