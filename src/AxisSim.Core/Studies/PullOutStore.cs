using System.Collections.Concurrent;
using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Curves at the speeds and in the modes that a move meets.</summary>
/// <param name="SpeedsRadiansPerSecond">Motor speeds, rad/s.</param>
/// <param name="Curves">Curves of the modes.</param>
internal sealed record MoveCurves(IReadOnlyList<double> SpeedsRadiansPerSecond, IReadOnlyList<PullOutCurve> Curves);

/// <summary>Keeps simulated pull-out curves by all that they depend on, for studies that look at many moves of one axis.</summary>
public sealed class PullOutStore
{
    // A curve takes a few hundred bytes, but a study without repeats must not pile them up.
    private const int Most = 4096;

    private readonly ConcurrentDictionary<Key, Lazy<MoveCurves>> curves = new();

    /// <summary>Moves whose curves were made.</summary>
    public int Made { get; private set; }

    internal MoveCurves Get(MountSetup setup, MountAxis axis, double peakSpeed, Func<MoveCurves> make)
    {
        if (curves.Count > Most)
        {
            curves.Clear();
        }

        AxisModel model = setup.Axis(axis);
        AxisParameters whole = AxisAssembly.Parameters(setup, axis) with { Clutch = double.PositiveInfinity };
        var key = new Key(model.Motor, Relevant(model.Drive), whole, AxisAssembly.TotalLoss(model.Train, setup.Disturbances.ColdGreaseFactor), setup.Disturbances.AmbientCelsius, peakSpeed);
        return curves.GetOrAdd(key, _ => new Lazy<MoveCurves>(() =>
        {
            lock (curves)
            {
                Made++;
            }

            return make();
        })).Value;
    }

    // A pull-out run is at the slew current: the rest of the drive's settings does not enter, but for the changeover, which says what is simulated.
    private static ChopperDrive Relevant(ChopperDrive drive) => drive with
    {
        TrackingCurrentAmperes = 0.0,
        HoldingCurrentAmperes = 0.0,
        CurrentFallDelaySeconds = 0.0,
        MaximumPulseRateHertz = 0.0,
    };

    private readonly record struct Key(StepperMotor Motor, ChopperDrive Drive, AxisParameters Whole, MeshLoss Loss, double AmbientCelsius, double PeakSpeed);
}
