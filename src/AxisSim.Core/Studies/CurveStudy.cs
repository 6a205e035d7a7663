using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Pull-out curves of an axis' motor with the path of its move through the torque-speed plane.</summary>
public static class CurveStudy
{
    /// <summary>Simulated pull-out below this share of the closed form marks a speed as unstable: the static crossing torque of whole steps is already pi/4 of it.</summary>
    public const double UnstableShare = 0.7;

    /// <summary>Share by which the low and the high supply voltage differ from nominal.</summary>
    public const double SupplySpread = 0.1;

    /// <summary>The move's own speeds are looked at up to this share of its peak, in each study at the same ones.</summary>
    private const double Beyond = 1.02;

    private const int Points = 32;
    private const int PathPoints = 400;

    /// <summary>All curves: both modes, three supply voltages, closed form and simulated.</summary>
    /// <exception cref="ArgumentException">The setup will not do (<see cref="SetupChecks"/>); the message lists all problems.</exception>
    public static TorqueSpeedCurves Run(MountSetup setup, MountAxis axis, Action<double>? progress = null)
    {
        EntryCheck.Require(setup, axis);
        var plan = new MovePlan(setup);
        AxisModel model = setup.Axis(axis);
        double peak = PeakSpeed(plan, axis, model);
        double[] speeds = [.. Speeds(Beyond * peak), .. new[] { 1.1, 1.2, 1.3, 1.4, 1.5 }.Select(share => share * peak)];
        (bool Full, SupplyLevel Level)[] wanted =
        [
            (false, SupplyLevel.Nominal), (true, SupplyLevel.Nominal),
            (false, SupplyLevel.Low), (true, SupplyLevel.Low),
            (false, SupplyLevel.High), (true, SupplyLevel.High),
        ];
        var curves = new List<PullOutCurve>();
        foreach ((bool full, SupplyLevel level) in wanted)
        {
            curves.Add(Curve(setup, axis, speeds, full, level));
            progress?.Invoke((double)curves.Count / wanted.Length);
        }

        return new TorqueSpeedCurves
        {
            SpeedsRadiansPerSecond = speeds,
            Curves = curves,
            UnstableBands = Bands(curves[1], speeds),
            Path = Path(setup, axis, plan),
            ChangeoverRadiansPerSecond = model.Drive.ChangeoverRadiansPerSecond,
        };
    }

    /// <summary>Least margin of the move's path against the simulated pull-out at nominal supply, in the mode that the drive uses at each speed.</summary>
    public static TorqueMargin LeastMargin(TorqueSpeedCurves curves)
    {
        TorqueMargin? least = null;
        foreach (NeedPoint point in curves.Path)
        {
            bool full = point.SpeedRadiansPerSecond > curves.ChangeoverRadiansPerSecond;
            double available = Available(curves, full, point.SpeedRadiansPerSecond);
            double need = Math.Abs(point.TorqueNewtonMetres);
            double value = available > 0.0 ? 1.0 - (need / available) : double.NegativeInfinity;
            if (least is null || value < least.Value)
            {
                least = new TorqueMargin(value, point.TimeSeconds, need, available, point.SpeedRadiansPerSecond);
            }
        }

        return least ?? throw new ArgumentException("the curves have no path", nameof(curves));
    }

    /// <summary>Least margin of one axis' planned move as a simulated move reports it; curves that another move of the same motor needed are taken from the store.</summary>
    public static TorqueMargin MarginOf(MountSetup setup, MountAxis axis, PullOutStore store) =>
        LeastMargin(ForMove(setup, axis, new MovePlan(setup), store));

    /// <summary>Only what the move itself meets: the nominal supply in the modes that it uses.</summary>
    internal static TorqueSpeedCurves ForMove(MountSetup setup, MountAxis axis, MovePlan plan, PullOutStore? store = null)
    {
        AxisModel model = setup.Axis(axis);
        double peak = PeakSpeed(plan, axis, model);
        double[] speeds = Speeds(Beyond * peak);
        PullOutCurve Nominal(bool full)
        {
            // Whoever keeps a store looks at many moves at once already.
            PullOutCurve Make() => Curve(setup, axis, speeds, full, SupplyLevel.Nominal, store is null ? -1 : 1);
            return store is null ? Make() : store.Get(model.Motor, model.Drive with { GivenDampingNewtonMetreSecondsPerRadian = model.DampingNewtonMetreSecondsPerRadian }, RotorInertia(setup, axis), peak, full, Make);
        }

        List<PullOutCurve> curves = [Nominal(full: false)];
        if (peak > model.Drive.ChangeoverRadiansPerSecond)
        {
            curves.Add(Nominal(full: true));
        }

        return new TorqueSpeedCurves
        {
            SpeedsRadiansPerSecond = speeds,
            Curves = curves,
            UnstableBands = curves.Count > 1 ? Bands(curves[1], speeds) : [],
            Path = Path(setup, axis, plan),
            ChangeoverRadiansPerSecond = model.Drive.ChangeoverRadiansPerSecond,
        };
    }

    /// <summary>Pull-out torque at a speed by interpolation, N m; speeds marked as unstable are passed over.</summary>
    internal static double Available(TorqueSpeedCurves curves, bool fullStepping, double speed)
    {
        PullOutCurve curve = curves.Curves.FirstOrDefault(c => c.FullStepping == fullStepping && c.Supply == SupplyLevel.Nominal) ?? curves.Curves[0];
        IReadOnlyList<double> x = curves.SpeedsRadiansPerSecond;
        double share = 1.0;
        int before = -1;
        int after = -1;
        for (int i = 0; i < x.Count; i++)
        {
            if (Unstable(curve, i))
            {
                continue;
            }

            if (x[i] <= speed)
            {
                before = i;
            }
            else if (after < 0)
            {
                after = i;
            }
        }

        before = before < 0 ? after : before;
        after = after < 0 ? before : after;
        if (before < 0)
        {
            return 0.0;
        }

        if (after > before)
        {
            share = (x[after] - speed) / (x[after] - x[before]);
        }

        return (share * curve.SimulatedNewtonMetres[before]) + ((1.0 - share) * curve.SimulatedNewtonMetres[after]);
    }

    /// <summary>Simulated pull-out torque of one axis at a motor speed, with all that it carries rigidly geared to the rotor, N m.</summary>
    internal static double PullOut(MountSetup setup, MountAxis axis, bool fullStepping, double speed)
    {
        AxisModel model = setup.Axis(axis);
        return new PullOutRun(model.Motor, model.Drive, RotorInertia(setup, axis), model.DampingNewtonMetreSecondsPerRadian, speed, fullStepping).Torque();
    }

    /// <summary>Inertia of the rotor with all that is rigidly geared to it, kg m2.</summary>
    private static double RotorInertia(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        return model.Motor.RotorInertiaKilogramSquareMetres + model.Train.ReflectedTrainInertia
            + model.Train.ReflectedToMotor(setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians));
    }

    private static bool Unstable(PullOutCurve curve, int i) =>
        curve.SimulatedNewtonMetres[i] < UnstableShare * curve.ClosedFormNewtonMetres[i];

    private static double PeakSpeed(MovePlan plan, MountAxis axis, AxisModel model)
    {
        double planned = plan.At(axis).PeakSpeed * model.Train.TotalRatio;
        return Math.Max(planned, 0.05 * model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio);
    }

    /// <summary>Speeds from a hundredth of the top, closer together at the low end.</summary>
    private static double[] Speeds(double top) =>
        [.. Enumerable.Range(0, Points).Select(i => top * (0.01 + (0.99 * Math.Pow((double)i / (Points - 1), 1.5))))];

    private static PullOutCurve Curve(MountSetup setup, MountAxis axis, double[] speeds, bool full, SupplyLevel level, int threads = -1)
    {
        AxisModel model = setup.Axis(axis);
        double factor = level switch { SupplyLevel.Low => 1.0 - SupplySpread, SupplyLevel.High => 1.0 + SupplySpread, _ => 1.0 };
        ChopperDrive drive = model.Drive with { SupplyVolts = factor * model.Drive.SupplyVolts };
        double[] closed = new double[speeds.Length];
        double[] simulated = new double[speeds.Length];
        Parallel.For(0, speeds.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
        {
            closed[i] = PullOutLaw.OnDrive(model.Motor, drive, full, drive.SupplyVolts, speeds[i]);
            simulated[i] = PullOut(setup.With(axis, model with { Drive = drive }), axis, full, speeds[i]);
        });
        return new PullOutCurve(full, level, drive.SupplyVolts, closed, simulated);
    }

    private static List<SpeedBand> Bands(PullOutCurve curve, double[] speeds)
    {
        var bands = new List<SpeedBand>();
        for (int i = 0; i < speeds.Length; i++)
        {
            if (!Unstable(curve, i))
            {
                continue;
            }

            int first = i;
            while (i + 1 < speeds.Length && Unstable(curve, i + 1))
            {
                i++;
            }

            // The edge lies between two speeds; the band reaches half-way to the stable neighbour.
            double from = first == 0 ? speeds[0] : 0.5 * (speeds[first - 1] + speeds[first]);
            double to = i + 1 == speeds.Length ? speeds[i] : 0.5 * (speeds[i] + speeds[i + 1]);
            bands.Add(new SpeedBand(from, to));
        }

        return bands;
    }

    /// <summary>Times at which the planned motion turns round between two of the given ones, by bisection: friction turns with it, and the need jumps.</summary>
    private static IEnumerable<double> Reversals(MotorPlan plan, double[] times)
    {
        const int Halvings = 60;
        for (int i = 1; i < times.Length; i++)
        {
            double low = times[i - 1], high = times[i];
            double before = Math.Sign(plan.Velocity(low));
            if (before * plan.Velocity(high) >= 0.0)
            {
                continue;
            }

            for (int halving = 0; halving < Halvings && high > low; halving++)
            {
                double middle = 0.5 * (low + high);
                (low, high) = before * plan.Velocity(middle) > 0.0 ? (middle, high) : (low, middle);
            }

            yield return high;
        }
    }

    private static NeedPoint[] Path(MountSetup setup, MountAxis axis, MovePlan plan)
    {
        var need = new ShaftNeed(setup, axis, plan);
        // Evenly in time, and just before and after each corner of the plan, where the need jumps.
        const double Beside = 1e-9;
        IEnumerable<double> corners = new[] { plan.PolarProfile, plan.DeclinationProfile }
            .SelectMany(p => p.Segments)
            .SelectMany(s => new[] { s.StartSeconds + Beside, s.StartSeconds + s.DurationSeconds - Beside });
        double[] times =
        [
            .. Enumerable.Range(0, PathPoints + 1).Select(i => plan.SlewSeconds * i / PathPoints)
                .Concat(corners)
                .Where(t => t >= 0.0 && t <= plan.SlewSeconds)
                .Order(),
        ];
        return
        [
            .. times.Distinct().Concat(Reversals(plan.At(axis), times).SelectMany(t => new[] { t - Beside, t + Beside })).Order().Select(t =>
            {
                (double speed, double torque) = need.At(t);
                return new NeedPoint(t, Math.Abs(speed), speed < 0.0 ? -torque : torque);
            }),
        ];
    }
}
