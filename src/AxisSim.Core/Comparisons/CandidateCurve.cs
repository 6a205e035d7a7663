using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Comparisons;

/// <summary>A point of the plane of axis rate and torque.</summary>
/// <param name="RateRadiansPerSecond">Rate at the axis, rad/s.</param>
/// <param name="TorqueNewtonMetres">Torque at the motor's shaft times the total reduction, N m: what would arrive at the axis without losses.</param>
public readonly record struct AxisPoint(double RateRadiansPerSecond, double TorqueNewtonMetres);

/// <summary>Pull-out torque of one candidate against the rate of the axis, in the mode that its drive uses at each speed, so that candidates of different reductions share a plane.</summary>
/// <param name="ClosedForm">Closed form.</param>
/// <param name="Simulated">Simulated at some rates.</param>
/// <param name="Safe">The safe rate with the closed form there; null when there is none.</param>
/// <param name="Needed">What the move needs at the safe rate with the load factor, in the order of time; empty when there is none.</param>
public sealed record CandidateCurve(IReadOnlyList<AxisPoint> ClosedForm, IReadOnlyList<AxisPoint> Simulated, AxisPoint? Safe, IReadOnlyList<AxisPoint> Needed)
{
    private const int Points = 64;
    private const int NeedPoints = 200;

    /// <summary>The curve of a result on one axis.</summary>
    /// <param name="result">The result.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="topRadiansPerSecond">Greatest rate of the plane, rad/s.</param>
    /// <param name="loadFactor">Factor on the load for what is needed.</param>
    /// <param name="simulated">Rates at which the pull-out torque is simulated, evenly up to the top; 0 for none.</param>
    public static CandidateCurve Of(CandidateResult result, MountAxis axis, double topRadiansPerSecond, double loadFactor, int simulated)
    {
        ArgumentNullException.ThrowIfNull(result);
        AxisModel model = result.Setup.Axis(axis);
        double ratio = model.Train.TotalRatio;
        bool Full(double rate) => rate * ratio > model.Drive.ChangeoverRadiansPerSecond;
        AxisPoint Closed(double rate) => new(rate, ratio * PullOutLaw.OnDrive(model.Motor, model.Drive, Full(rate), model.Drive.SupplyVolts, rate * ratio));
        AxisPoint[] points = new AxisPoint[simulated];
        Parallel.For(0, simulated, i =>
        {
            double rate = topRadiansPerSecond * (i + 1) / simulated;
            points[i] = new AxisPoint(rate, ratio * CurveStudy.PullOut(result.Setup, axis, Full(rate), rate * ratio));
        });
        double safe = result.Axes.First(one => one.Axis == axis).RateRadiansPerSecond;
        return new CandidateCurve(
            [.. Enumerable.Range(0, Points + 1).Select(i => Closed(topRadiansPerSecond * i / Points))],
            points,
            double.IsNaN(safe) ? null : Closed(safe),
            double.IsNaN(safe) ? [] : Need(SetupEdits.Loaded(result.Setup, axis, loadFactor), axis, ratio));
    }

    private static AxisPoint[] Need(MountSetup loaded, MountAxis axis, double ratio)
    {
        const double beside = 1e-9;
        var plan = new MovePlan(loaded);
        var need = new ShaftNeed(loaded, axis, plan);
        MotionProfile profile = axis == MountAxis.Polar ? plan.PolarProfile : plan.DeclinationProfile;
        IEnumerable<double> corners = profile.Segments.SelectMany(s => new[] { s.StartSeconds + beside, s.StartSeconds + s.DurationSeconds - beside });
        return
        [
            .. Enumerable.Range(0, NeedPoints + 1).Select(i => profile.DurationSeconds * i / NeedPoints).Concat(corners).Where(t => t >= 0.0 && t <= profile.DurationSeconds).Order().Select(t =>
            {
                (double speed, double torque) = need.At(t);
                return new AxisPoint(Math.Abs(speed) / ratio, ratio * (speed < 0.0 ? -torque : torque));
            }),
        ];
    }
}
