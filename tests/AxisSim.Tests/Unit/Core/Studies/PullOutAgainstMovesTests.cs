using System.Globalization;
using AxisSim.Core.Batches;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>The curve and the margin are held against the engine of moves: what they say of a steady load is what a move under it does.</summary>
[Trait("speed", "slow")]
public sealed class PullOutAgainstMovesTests
{
    // What the promise is, as shares of the torque.
    private const double Microstepped = 0.01;
    private const double FullStepped = 0.03;

    private const double SureMargin = TorqueMargin.Undecided;
    private const double HoldSeconds = 3.0;
    private const double GrowthSeconds = 12.0;

    // What the run-up left swinging dies out first: that is the need's, not the curve's.
    private const double WaitSeconds = 5.0;
    private const int Levels = 8;
    private const int Moves = 24;
    private static readonly double[] Shares = [0.04, 0.1, 0.18, 0.27, 0.37, 0.48, 0.6, 0.73, 0.87, 1.0];

    public static TheoryData<string> Scenarios => [.. Repository.Scenarios.Select(path => Path.GetFileName(path))];

    // Their stages ring at 18 kHz and more, so that every step is a microsecond: minutes each.
    private static readonly int[] Dear = [9, 15];

    private static readonly int[] Seeds = [.. Enumerable.Range(1, 22).Except(Dear)];

    // The gap that is known, told in docs/model.md: three moves of these stall with margins of 0.14, 0.42 and 0.52, and 11 full-steps itself out of a gentle run-up.
    private static readonly int[] WrongPromises = [11, 14];

    public static TheoryData<int> Curves => [.. Seeds];

    public static TheoryData<int> Promises => [.. Seeds.Except(WrongPromises)];

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_scenarios_pull_out_is_the_load_at_which_its_moves_lose_sync(string file)
    {
        MountSetup mount = Read(file);
        List<string> wrong = [.. Axes(mount).SelectMany(axis => WrongEdges(mount, axis))];
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Theory]
    [MemberData(nameof(Curves))]
    public void A_seeded_mounts_pull_out_is_the_load_at_which_its_moves_lose_sync(int seed)
    {
        List<string> wrong = [.. WrongEdges(SeededMounts.Of(seed), MountAxis.Polar, promises: !WrongPromises.Contains(seed))];
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_scenarios_margin_tells_which_moves_arrive(string file)
    {
        MountSetup mount = Read(file);
        List<string> wrong = [.. Axes(mount).SelectMany(axis => WrongMargins(mount, axis, 5))];
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    [Theory]
    [MemberData(nameof(Promises))]
    public void A_seeded_mounts_margin_tells_which_moves_arrive(int seed)
    {
        List<string> wrong = [.. WrongMargins(SeededMounts.Of(seed), MountAxis.Polar, seed)];
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static MountSetup Read(string file) => ScenarioReader.ReadFile(Repository.PathOf("scenarios", file), []).Scenario!.Setup;

    private static IEnumerable<MountAxis> Axes(MountSetup mount) =>
        new[] { (MountAxis.Polar, mount.Polar), (MountAxis.Declination, mount.Declination) }.Where(pair => pair.Item2 is not null).Select(pair => pair.Item1);

    /// <summary>Ten speeds a mount, of which every other one full-steps; the changeover just below or far below.</summary>
    private static IEnumerable<string> WrongEdges(MountSetup mount, MountAxis axis, bool promises = true)
    {
        TorqueSpeedCurves curves = CurveStudy.Whole(mount, axis, [SupplyLevel.Nominal], null);
        AxisModel model = mount.Axis(axis);
        double top = model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio;
        for (int i = 0; i < Shares.Length; i++)
        {
            bool full = i % 2 == 1;
            double speed = Shares[i] * top;
            double changeover = full ? (i % 4 == 1 ? 0.98 : 0.5) * speed : double.PositiveInfinity;
            AxisMotion motion = Gentle(mount, axis, speed);
            MountSetup At(double load) => SteadyMoves.Of(mount, axis, load, motion, changeover, GrowthSeconds, atRate: true, WaitSeconds);
            double drag = Drag(mount, axis);
            PullOutTorque shown = curves.At(full, speed);
            double peak = motion.RampInUseSeconds + WaitSeconds + (0.5 * GrowthSeconds);
            double least = shown.LeastNewtonMetres > 0.0 ? Spent(At, axis, drag, peak, shown.LeastNewtonMetres) : 0.0;
            double greatest = Spent(At, axis, drag, peak, shown.GreatestNewtonMetres);

            // Loads with the bearings' own share: from the bearings alone to above the greatest, then twice between the first that fails and the one below.
            double low = drag;
            double high = Math.Max(1.2 * Math.Max(least, greatest), 1.3 * low);
            double kept = 0.0;
            bool inRamp = false;
            for (int stage = 0; stage < 3; stage++)
            {
                double[] loads = [.. Enumerable.Range(0, Levels).Select(k => low + ((high - low) * k / (Levels - 1)))];
                // A lever longer than any allowed is only a way to say a torque.
                BatchResult[] results = BatchStudy.RunUnchecked([.. loads.Select(load => new BatchCase(At(load - drag), axis))], new BatchOptions());
                int fails = Array.FindIndex(results, result => result.End != MoveEnd.Arrives && result.FailureSeconds < motion.RampInUseSeconds + WaitSeconds + GrowthSeconds);
                inRamp = fails >= 0 && results[fails].FailureSeconds < motion.RampInUseSeconds;
                if (fails <= 0)
                {
                    kept = fails < 0 ? loads[^1] : 0.0;
                    break;
                }

                (low, high, kept) = (loads[fails - 1], loads[fails], 0.5 * (loads[fails - 1] + loads[fails]));
            }

            if (inRamp)
            {
                // The way there decides, not the speed: that is the margin's to tell.
                TorqueMargin margin = Margin(At(kept == 0.0 ? 0.0 : high - drag), axis, curves);
                if (promises && margin.Value > SureMargin && margin.Decides)
                {
                    yield return string.Create(CultureInfo.InvariantCulture, $"{axis} {(full ? "full" : "micro")} {speed:0.00} rad/s is not reached, with a margin of {margin.Value:0.000}");
                }

                continue;
            }

            // The edge lies between what was held for a second, as the curve's loads are, and the peak.
            double held = kept * SteadyMoves.HeldShare(GrowthSeconds, 1.0);
            double share = full ? FullStepped : Microstepped;
            if (kept < (1.0 - share) * least || held > (1.0 + share) * Math.Max(least, greatest))
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"{axis} {(full ? "full" : "micro")} {speed:0.00} rad/s: {shown.LeastNewtonMetres * 1e3:0.0} to {shown.GreatestNewtonMetres * 1e3:0.0} mN m, spent at {least:0.000} to {greatest:0.000} N m about the axis; moves keep sync to {held:0.000} for a second and to {kept:0.000}");
            }
        }
    }

    private static TorqueMargin Margin(MountSetup setup, MountAxis axis, TorqueSpeedCurves curves) => CurveStudy.LeastMargin(curves with
    {
        Path = CurveStudy.Path(setup, axis, new MovePlan(setup)),
        ChangeoverRadiansPerSecond = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond,
    });

    /// <summary>Steady load about the axis, with the bearings' own, that asks for a torque of the shaft at a rate, N m; none below the bearings'.</summary>
    private static double Spent(Func<double, MountSetup> at, MountAxis axis, double drag, double peakSeconds, double shaftTorque)
    {
        double load = 2.0 * drag;
        for (int i = 0; i < 20; i++)
        {
            MountSetup setup = at(load - drag);
            load *= shaftTorque / Math.Abs(new ShaftNeed(setup, axis, new MovePlan(setup)).At(peakSeconds).Torque);
            load = Math.Max(drag, load);
        }

        return load;
    }

    /// <summary>A full-stepping rotor may be knocked out of step where its load goes from one flank to the other as it brakes: the margin does not speak of that (docs/model.md).</summary>
    private static bool KnockedWhileBraking(AxisModel model, BatchResult result) =>
        result.FailureSeconds > result.SlewSeconds - model.Motion.RampInUseSeconds && model.Drive.ChangeoverRadiansPerSecond < model.Motion.SlewRateRadiansPerSecond * model.Train.TotalRatio;

    private static double Drag(MountSetup mount, MountAxis axis) =>
        Math.Max(AxisAssembly.Parameters(mount, axis).AxisCoulomb, 1e-3 * mount.Axis(axis).Motor.HoldingTorqueNewtonMetres * mount.Axis(axis).Train.TotalRatio);

    /// <summary>An S-curve that asks for little: its acceleration takes a tenth of the motor's torque at most.</summary>
    private static AxisMotion Gentle(MountSetup mount, MountAxis axis, double speed)
    {
        AxisModel model = mount.Axis(axis);
        double n = model.Train.TotalRatio;
        double shaft = (mount.Load.Inertia(axis, mount.Move.Start.DeclinationRadians) / n / n / model.Train.Worm.DrivingEfficiencyWith(1.0)) + model.Motor.RotorInertiaKilogramSquareMetres;
        double torque = 0.05 * model.Motor.TorqueConstantNewtonMetresPerAmpere * model.Drive.SlewCurrentAmperes;
        return new AxisMotion { SlewRateRadiansPerSecond = speed / n, Ramp = Ramp.OfSeconds(Math.Max(3.0, 2.0 * shaft * speed / torque)), Shape = RampShape.SCurve, JerkShare = 0.5 };
    }

    private static IEnumerable<string> WrongMargins(MountSetup mount, MountAxis axis, int seed)
    {
        TorqueSpeedCurves curves = CurveStudy.Whole(mount, axis, [SupplyLevel.Nominal], null);
        double n = mount.Axis(axis).Train.TotalRatio;
        foreach ((MountSetup setup, TorqueMargin margin, BatchResult result) in Wrongs(mount, axis, seed, curves))
        {
            AxisMotion motion = setup.Axis(axis).Motion;
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{axis} margin {margin.Value:0.000} but {result.End} at {result.FailureSeconds:0.00} s: {motion.SlewRateRadiansPerSecond * n:0.0} rad/s, {motion.Shape} of {motion.RampInUseSeconds:0.00} s, changeover {setup.Axis(axis).Drive.ChangeoverRadiansPerSecond:0.0}, least at {margin.TimeSeconds:0.00} s of {result.SlewSeconds:0.00}, {margin.MotorSpeedRadiansPerSecond:0.0} rad/s, {margin.NeededNewtonMetres * 1e3:0.0} of {margin.AvailableNewtonMetres * 1e3:0.0} mN m");
        }
    }

    /// <summary>Moves drawn at random of which the margin promised something else than what they do.</summary>
    internal static IEnumerable<(MountSetup Setup, TorqueMargin Margin, BatchResult Result)> Wrongs(MountSetup mount, MountAxis axis, int seed, TorqueSpeedCurves curves)
    {
        AxisModel model = mount.Axis(axis);
        double n = model.Train.TotalRatio;
        var random = new Random(seed);
        double inertia = mount.Load.Inertia(axis, mount.Move.Start.DeclinationRadians);
        double efficiency = 1.0 / (1.0 + AxisAssembly.TotalLoss(model.Train, mount.Disturbances.ColdGreaseFactor).Driving);
        double field = model.Motor.RotorTeeth * model.Motor.TorqueConstantNewtonMetresPerAmpere * model.Drive.SlewCurrentAmperes * n * n * efficiency;
        double swing = 2.0 * Math.PI * Math.Sqrt(inertia * ((1.0 / model.Train.StiffnessNewtonMetresPerRadian) + (1.0 / field)));
        var setups = new List<MountSetup>();
        for (int i = 0; i < Moves; i++)
        {
            double rate = model.Motion.SlewRateRadiansPerSecond * (0.4 + (1.0 * random.NextDouble()));
            double torque = (0.3 + (1.1 * random.NextDouble())) * curves.At(false, rate * n).LeastNewtonMetres;
            double part = random.NextDouble();
            double acceleration = part * torque / ((inertia / n / efficiency) + (model.Motor.RotorInertiaKilogramSquareMetres * n));
            var motion = new AxisMotion
            {
                SlewRateRadiansPerSecond = rate,

                // Not shorter than two swings of the axis: a jolt is over before the rotor has fallen behind.
                Ramp = Ramp.OfSeconds(Math.Clamp(rate / acceleration, 2.0 * swing, 60.0)),
                Shape = random.Next(2) == 0 ? RampShape.Trapezoid : RampShape.SCurve,
            };
            double opposing = Math.Max(0.0, ((1.0 - part) * torque * n * efficiency) - Drag(mount, axis));
            double changeover = random.Next(2) == 0 ? double.PositiveInfinity : rate * n * (0.3 + (0.6 * random.NextDouble()));
            setups.Add(SteadyMoves.Of(mount, axis, opposing, motion, changeover, HoldSeconds));
        }

        BatchResult[] results = BatchStudy.RunUnchecked([.. setups.Select(setup => new BatchCase(setup, axis))], new BatchOptions());
        for (int i = 0; i < Moves; i++)
        {
            TorqueMargin margin = Margin(setups[i], axis, curves);
            bool arrives = results[i].End == MoveEnd.Arrives;
            if (margin.Decides && ((margin.Value > SureMargin && !arrives && !KnockedWhileBraking(setups[i].Axis(axis), results[i])) || (margin.Value < -SureMargin && arrives)))
            {
                yield return (setups[i], margin, results[i]);
            }
        }
    }
}
