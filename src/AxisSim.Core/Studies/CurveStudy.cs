using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Pull-out curves of an axis' motor with the path of its move through the torque-speed plane.</summary>
public static class CurveStudy
{
    /// <summary>Share by which the low and the high supply voltage differ from nominal.</summary>
    public const double SupplySpread = 0.1;

    /// <summary>The move's own speeds are looked at up to this share of its peak, in each study at the same ones.</summary>
    private const double Beyond = 1.02;

    private const int Points = 24;

    /// <summary>A notch in the curve has ended at this multiple of its speed.</summary>
    private const double PastNotch = 1.2;

    /// <summary>Stretches of the path over the time of the slew.</summary>
    private const int PathStretches = 400;

    /// <summary>Stretches of the path over the speeds of a ramp, however short it is.</summary>
    private const int RampStretches = 150;

    /// <summary>Rounds in which speeds are put between those that differ.</summary>
    private const int Rounds = 2;

    /// <summary>Where the need comes this near to the least of a band, the band decides.</summary>
    private const double NearShare = 0.9;

    /// <summary>From this share of the greatest speed on the rate counts as reached.</summary>
    private const double SteadyShare = 0.999;

    /// <summary>A swing of the need by more than this share of the torque there is may grow or not.</summary>
    private const double ShakenShare = 0.3;

    /// <summary>All curves: both modes, three supply voltages, closed form and simulated.</summary>
    /// <exception cref="ArgumentException">The setup will not do (<see cref="SetupChecks"/>); the message lists all problems.</exception>
    public static TorqueSpeedCurves Run(MountSetup setup, MountAxis axis, Action<double>? progress = null)
    {
        EntryCheck.Require(setup, axis);
        return Whole(setup, axis, [SupplyLevel.Nominal, SupplyLevel.Low, SupplyLevel.High], progress);
    }

    /// <summary>Least margin of the move's path against the simulated pull-out at nominal supply, in the mode that the drive uses at each speed.</summary>
    public static TorqueMargin LeastMargin(TorqueSpeedCurves curves)
    {
        TorqueMargin? least = null;
        PullOutBand? band = null;
        double nearest = double.PositiveInfinity;
        foreach (NeedPoint point in curves.Path)
        {
            bool full = point.SpeedRadiansPerSecond > curves.ChangeoverRadiansPerSecond;
            PullOutTorque torque = curves.At(full, point.SpeedRadiansPerSecond);
            double available = torque.LeastNewtonMetres;
            double need = Math.Abs(point.TorqueNewtonMetres);
            double value = available > 0.0 ? 1.0 - (need / available) : double.NegativeInfinity;
            if (torque.IsBand && need >= NearShare * available && value < nearest)
            {
                band = curves.Bands.FirstOrDefault(b => b.FullStepping == full && b.FromRadiansPerSecond <= point.SpeedRadiansPerSecond && point.SpeedRadiansPerSecond <= b.ToRadiansPerSecond) ?? band;
                nearest = value;
            }

            if (least is null || value < least.Value)
            {
                least = new TorqueMargin(value, point.TimeSeconds, need, available, point.SpeedRadiansPerSecond);
            }
        }

        TorqueMargin found = least ?? throw new ArgumentException("the curves have no path", nameof(curves));
        return found with { Band = band, ShakesAtRate = Shakes(curves, found.AvailableNewtonMetres) };
    }

    /// <summary>Whether the need swings by a great part of what there is once the rate is reached and the ramp's own swing has died out: near a resonance a little more or less of anything decides.</summary>
    private static bool Shakes(TorqueSpeedCurves curves, double available)
    {
        double top = curves.Path.Max(point => point.SpeedRadiansPerSecond);
        NeedPoint[] steady = [.. curves.Path.Where(point => point.SpeedRadiansPerSecond >= SteadyShare * top)];
        NeedPoint[] late = [.. steady.Skip(steady.Length / 2)];
        return late.Length > 0 && late.Max(point => point.TorqueNewtonMetres) - late.Min(point => point.TorqueNewtonMetres) > ShakenShare * available;
    }

    /// <summary>Least margin of one axis' planned move as a simulated move reports it; curves that another move of the same axis needed are taken from the store.</summary>
    public static TorqueMargin MarginOf(MountSetup setup, MountAxis axis, PullOutStore store) =>
        LeastMargin(ForMove(setup, axis, new MovePlan(setup), store));

    /// <summary>Only what the move itself meets: the nominal supply, each mode at the speeds at which the drive uses it.</summary>
    internal static TorqueSpeedCurves ForMove(MountSetup setup, MountAxis axis, MovePlan plan, PullOutStore? store = null)
    {
        double peak = PeakSpeed(plan, axis, setup.Axis(axis));

        // Whoever keeps a store looks at many moves at once already.
        MoveCurves curves = store is null ? Met(setup, axis, peak, -1) : store.Get(setup, axis, peak, () => Met(setup, axis, peak, 1));
        return Curves(setup, axis, plan, curves.SpeedsRadiansPerSecond, curves.Curves);
    }

    /// <summary>Both modes at some supply voltages, the nominal one among them, over all speeds.</summary>
    internal static TorqueSpeedCurves Whole(MountSetup setup, MountAxis axis, SupplyLevel[] levels, Action<double>? progress)
    {
        var plan = new MovePlan(setup);
        AxisModel model = setup.Axis(axis);
        double peak = PeakSpeed(plan, axis, model);
        double[] speeds = [.. Speeds(peak, model.Drive.ChangeoverRadiansPerSecond, Met(setup, axis)), .. new[] { 1.1, 1.2, 1.3, 1.4, 1.5 }.Select(share => share * peak)];
        var samples = new Dictionary<(bool Full, SupplyLevel Level), PullOutSamples>();
        foreach (SupplyLevel level in levels)
        {
            MountSetup supplied = setup.With(axis, model with { Drive = Supplied(model.Drive, level) });
            foreach (bool full in new[] { false, true })
            {
                var sample = new PullOutSamples(supplied, axis, full);
                samples.Add((full, level), sample);
                sample.Take(speeds, -1);
                for (int round = 0; level == SupplyLevel.Nominal && round < Rounds; round++)
                {
                    speeds = Merged(speeds, sample.Between(speeds));
                    sample.Take(speeds, -1);
                }

                progress?.Invoke((double)samples.Count / (2 * levels.Length));
            }
        }

        samples[(false, SupplyLevel.Nominal)].Take(speeds, -1);
        List<PullOutCurve> curves = [.. samples.Select(s => Curve(model, s.Value, speeds, s.Key.Level))];
        return Curves(setup, axis, plan, speeds, curves);
    }

    private static MoveCurves Met(MountSetup setup, MountAxis axis, double peak, int threads)
    {
        AxisModel model = setup.Axis(axis);
        double changeover = model.Drive.ChangeoverRadiansPerSecond;
        double[] speeds = Speeds(peak, changeover, Met(setup, axis));
        List<PullOutSamples> samples = [];
        foreach (bool full in new[] { false, true })
        {
            bool Meets(double speed) => full ? speed >= changeover : speed <= changeover;
            if (!speeds.Any(Meets))
            {
                continue;
            }

            var sample = new PullOutSamples(setup, axis, full);
            samples.Add(sample);
            sample.Take(speeds.Where(Meets), threads);
            for (int round = 0; round < Rounds; round++)
            {
                double[] between = sample.Between(speeds);
                speeds = Merged(speeds, between);
                sample.Take(between, threads);
            }
        }

        return new MoveCurves(speeds, [.. samples.Select(sample => Curve(model, sample, speeds, SupplyLevel.Nominal))]);
    }

    private static TorqueSpeedCurves Curves(MountSetup setup, MountAxis axis, MovePlan plan, IReadOnlyList<double> speeds, IReadOnlyList<PullOutCurve> curves) => new()
    {
        SpeedsRadiansPerSecond = speeds,
        Curves = curves,
        Bands = [.. curves.Where(curve => curve.Supply == SupplyLevel.Nominal).SelectMany(curve => BandsOf(curve, speeds))],
        Path = Path(setup, axis, plan),
        ChangeoverRadiansPerSecond = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond,
    };

    private static PullOutCurve Curve(AxisModel model, PullOutSamples samples, double[] speeds, SupplyLevel level)
    {
        ChopperDrive drive = Supplied(model.Drive, level);
        PullOutTorque[] torques = samples.At(speeds);
        return new PullOutCurve(
            samples.FullStepping,
            level,
            drive.SupplyVolts,
            [.. speeds.Select(speed => PullOutLaw.OnDrive(model.Motor, drive, samples.FullStepping, drive.SupplyVolts, speed))],
            [.. torques.Select(torque => torque.LeastNewtonMetres)],
            [.. torques.Select(torque => torque.GreatestNewtonMetres)]);
    }

    private static ChopperDrive Supplied(ChopperDrive drive, SupplyLevel level) => level switch
    {
        SupplyLevel.Low => drive with { SupplyVolts = (1.0 - SupplySpread) * drive.SupplyVolts },
        SupplyLevel.High => drive with { SupplyVolts = (1.0 + SupplySpread) * drive.SupplyVolts },
        _ => drive,
    };

    private static double[] Merged(double[] speeds, double[] more) => [.. speeds.Concat(more).Order()];

    private static double PeakSpeed(MovePlan plan, MountAxis axis, AxisModel model)
    {
        double planned = plan.At(axis).PeakSpeed * model.Train.TotalRatio;
        return Math.Max(planned, 0.05 * model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio);
    }

    /// <summary>Speeds at which the detent drives a swing of the axis, and where that has ended: a notch there is narrower than the other speeds are apart.</summary>
    private static IEnumerable<double> Met(MountSetup setup, MountAxis axis) =>
        new AxisSwings(setup.Axis(axis), AxisAssembly.Parameters(setup, axis)).DetentSpeeds.SelectMany(speed => new[] { speed, PastNotch * speed });

    /// <summary>Speeds from a hundredth of the top, closer together at the low end; among them the peak itself, the changeover, up to which one mode is simulated and from which the other, and those met.</summary>
    private static double[] Speeds(double peak, double changeover, IEnumerable<double> met)
    {
        double[] even = [.. Enumerable.Range(0, Points).Select(i => Beyond * peak * (0.01 + (0.99 * Math.Pow((double)i / (Points - 1), 1.5))))];
        IEnumerable<double> own = met.Append(changeover).Where(speed => speed > even[0] && speed < even[^1]).Append(peak);
        return [.. even.Concat(own).Distinct().Order()];
    }

    private static List<PullOutBand> BandsOf(PullOutCurve curve, IReadOnlyList<double> speeds)
    {
        int[] known = [.. Enumerable.Range(0, speeds.Count).Where(i => !double.IsNaN(curve.LeastNewtonMetres[i]))];
        var bands = new List<PullOutBand>();
        for (int k = 0; k < known.Length; k++)
        {
            if (!curve.At(known[k]).IsBand)
            {
                continue;
            }

            // Between a speed with a band and one without lies part of the band.
            (double least, double greatest) = (curve.LeastNewtonMetres[known[k]], curve.GreatestNewtonMetres[known[k]]);
            var band = new PullOutBand(curve.FullStepping, speeds[known[Math.Max(0, k - 1)]], speeds[known[Math.Min(known.Length - 1, k + 1)]], least, greatest);
            PullOutBand? before = bands.Count > 0 ? bands[^1] : null;
            if (before is null || band.FromRadiansPerSecond > before.ToRadiansPerSecond)
            {
                bands.Add(band);
            }
            else if (band.IsNothingSure == before.IsNothingSure)
            {
                bands[^1] = before with
                {
                    ToRadiansPerSecond = band.ToRadiansPerSecond,
                    LeastNewtonMetres = Math.Min(before.LeastNewtonMetres, least),
                    GreatestNewtonMetres = Math.Max(before.GreatestNewtonMetres, greatest),
                };
            }
            else
            {
                // Where nothing is sure is a band of its own; what lies between the two belongs to it.
                (double end, double start) = band.IsNothingSure ? (band.FromRadiansPerSecond, band.FromRadiansPerSecond) : (before.ToRadiansPerSecond, before.ToRadiansPerSecond);
                bands[^1] = before with { ToRadiansPerSecond = end };
                bands.Add(band with { FromRadiansPerSecond = start });
            }
        }

        return bands;
    }

    /// <summary>The path in stretches that are even in time, and in speed where that changes faster; of each the points of the least and the greatest torque: a swing between two points must not hide.</summary>
    internal static IReadOnlyList<NeedPoint> Path(MountSetup setup, MountAxis axis, MovePlan plan)
    {
        var path = new List<NeedPoint>();
        double stretch = plan.SlewSeconds / PathStretches, until = stretch;
        double change = Math.Abs(plan.At(axis).PeakSpeed) * setup.Axis(axis).Train.TotalRatio / RampStretches, from = 0.0;
        NeedPoint? low = null;
        NeedPoint? high = null;
        void Take()
        {
            if (low is not null && high is not null)
            {
                path.AddRange(low == high ? [low] : low.TimeSeconds < high.TimeSeconds ? [low, high] : new[] { high, low });
            }

            (low, high) = (null, null);
        }

        foreach (NeedPoint at in new NeedRun(setup, axis, plan).Until(plan.SlewSeconds))
        {
            double speed = Math.Abs(at.SpeedRadiansPerSecond);
            if (at.TimeSeconds > until || Math.Abs(speed - from) > change)
            {
                Take();
                from = speed;
                until += at.TimeSeconds > until ? stretch : 0.0;
            }

            double along = at.SpeedRadiansPerSecond < 0.0 ? -at.TorqueNewtonMetres : at.TorqueNewtonMetres;
            NeedPoint point = at with { SpeedRadiansPerSecond = speed, TorqueNewtonMetres = along + 0.0 };
            low = low is null || along < low.TorqueNewtonMetres ? point : low;
            high = high is null || along > high.TorqueNewtonMetres ? point : high;
        }

        Take();
        return path;
    }
}
