using System.Collections.Concurrent;
using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Studies;

/// <summary>Keeps simulated pull-out curves by all that they depend on, for studies that look at many moves of one motor.</summary>
public sealed class PullOutStore
{
    // A curve takes a few hundred bytes, but a study without repeats must not pile them up.
    private const int Most = 4096;

    private readonly ConcurrentDictionary<Key, Lazy<PullOutCurve>> curves = new();

    /// <summary>Curves that were made.</summary>
    public int Made { get; private set; }

    internal PullOutCurve Get(StepperMotor motor, ChopperDrive drive, double inertia, double peakSpeed, bool full, Func<PullOutCurve> make)
    {
        if (curves.Count > Most)
        {
            curves.Clear();
        }

        return curves.GetOrAdd(new Key(motor, Relevant(drive), inertia, peakSpeed, full), _ => new Lazy<PullOutCurve>(() =>
        {
            lock (curves)
            {
                Made++;
            }

            return make();
        })).Value;
    }

    // A pull-out run is in one mode at the slew current: the rest of the drive's settings does not enter.
    private static ChopperDrive Relevant(ChopperDrive drive) => drive with
    {
        ChangeoverRadiansPerSecond = 0.0,
        TrackingCurrentAmperes = 0.0,
        HoldingCurrentAmperes = 0.0,
        CurrentFallDelaySeconds = 0.0,
        MaximumPulseRateHertz = 0.0,
    };

    private readonly record struct Key(StepperMotor Motor, ChopperDrive Drive, double Inertia, double PeakSpeed, bool Full);
}
