using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Questions;

/// <summary>What a planned move asks of its motor at one moment, by cause; N m at the motor's shaft, in the direction of motion.</summary>
/// <remarks>
/// Each share is what the need (<c>ShaftNeed</c>) falls by when its cause is taken away, losses last: first the loss in worm and stages, then friction of the bearings, then
/// imbalance and wind; what is left accelerates the inertia. The shares add up to the need.
/// </remarks>
/// <param name="TimeSeconds">When, s from the start of the move.</param>
/// <param name="MotorSpeedRadiansPerSecond">Planned speed of the motor then, rad/s (absolute).</param>
/// <param name="FullStepping">Whether the drive full-steps at that speed.</param>
/// <param name="InertiaNewtonMetres">To accelerate rotor, train and load; negative when slowing down.</param>
/// <param name="ImbalanceNewtonMetres">To lift the imbalance; negative when it helps.</param>
/// <param name="WindNewtonMetres">To stand against the wind; negative when it helps.</param>
/// <param name="BearingsNewtonMetres">Friction of bearings and seals.</param>
/// <param name="TrainLossNewtonMetres">Lost in worm and stages.</param>
/// <param name="AvailableNewtonMetres">Pull-out torque of the closed form at that speed and mode.</param>
public sealed record TorqueShares(
    double TimeSeconds,
    double MotorSpeedRadiansPerSecond,
    bool FullStepping,
    double InertiaNewtonMetres,
    double ImbalanceNewtonMetres,
    double WindNewtonMetres,
    double BearingsNewtonMetres,
    double TrainLossNewtonMetres,
    double AvailableNewtonMetres)
{
    private const int Places = 400;

    /// <summary>Times just inside the corners of the plan, where the need jumps, s.</summary>
    private const double BesideSeconds = 1e-9;

    /// <summary>The whole need, N m; negative when the load drives the motor.</summary>
    public double NeededNewtonMetres => InertiaNewtonMetres + ImbalanceNewtonMetres + WindNewtonMetres + BearingsNewtonMetres + TrainLossNewtonMetres;

    /// <summary>The need over what is available; infinite when nothing is.</summary>
    public double NeededShare => AvailableNewtonMetres > 0.0 ? Math.Abs(NeededNewtonMetres) / AvailableNewtonMetres : double.PositiveInfinity;

    /// <summary>The shares at the moment, up to a time, at which the plan of one axis leaves its motor least.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="untilSeconds">Later moments do not count: the move has failed by then. At least the first moment of the plan is looked at.</param>
    public static TorqueShares Hardest(MountSetup setup, MountAxis axis, double untilSeconds = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(setup);
        var plan = new MovePlan(setup);
        MotionProfile own = axis == MountAxis.Polar ? plan.PolarProfile : plan.DeclinationProfile;
        double end = Math.Min(untilSeconds, plan.SlewSeconds);
        var need = new ShaftNeed(setup, axis, plan);
        IEnumerable<double> corners = own.Segments.SelectMany(segment => new[] { segment.StartSeconds + BesideSeconds, segment.StartSeconds + segment.DurationSeconds - BesideSeconds });
        double hardest = Enumerable.Range(0, Places + 1).Select(i => end * i / Places).Concat(corners.Where(time => time <= end)).MaxBy(time =>
        {
            (double speed, double torque) = need.At(time);
            double available = Available(setup.Axis(axis), Math.Abs(speed));
            return available > 0.0 ? Math.Abs(torque) / available : torque == 0.0 ? 0.0 : double.PositiveInfinity;
        });
        return At(setup, axis, hardest);
    }

    /// <summary>The shares at a moment of the plan, s.</summary>
    public static TorqueShares At(MountSetup setup, MountAxis axis, double seconds)
    {
        ArgumentNullException.ThrowIfNull(setup);
        var plan = new MovePlan(setup);
        AxisModel model = setup.Axis(axis);
        (double Speed, double Torque) Need(MountSetup changed) => new ShaftNeed(changed, axis, plan).At(seconds);
        double direction = Need(setup).Speed < 0.0 ? -1.0 : 1.0, speed = Math.Abs(Need(setup).Speed);
        double Torque(MountSetup changed) => direction * Need(changed).Torque;
        MountSetup lossless = setup.With(axis, model with { Train = OneChanges.WithoutLoss(model.Train) });
        MountSetup frictionless = lossless.Edit(axis, one => one with { Bearings = new AxisBearings() });
        double all = Torque(setup), withoutLoss = Torque(lossless), bare = Torque(frictionless);
        double imbalance = bare - Torque(OneChange.WithoutImbalance.Apply(frictionless, axis));
        double wind = bare - Torque(OneChange.WithoutWind.Apply(frictionless, axis));
        return new TorqueShares(
            seconds, speed, speed > model.Drive.ChangeoverRadiansPerSecond,
            Plain(bare - imbalance - wind), Plain(imbalance), Plain(wind), Plain(withoutLoss - bare), Plain(all - withoutLoss), Available(model, speed));
    }

    private static double Available(AxisModel model, double speed) =>
        PullOutLaw.OnDrive(model.Motor, model.Drive, speed > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, speed);

    // Differences of equal numbers leave roundings, and minus nought.
    private static double Plain(double newtonMetres) => Math.Abs(newtonMetres) < 1e-12 ? 0.0 : newtonMetres;
}
