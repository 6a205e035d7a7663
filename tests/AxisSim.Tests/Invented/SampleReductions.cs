using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Studies;
using AxisSim.Plots.Pictures;

namespace AxisSim.Tests.Invented;

/// <summary>Lessons on the reduction made by hand, with figures that are easy to follow in the texts.</summary>
internal static class SampleReductions
{
    private const double Degree = Math.PI / 180.0;
    private const double Arcsecond = Degree / 3600.0;

    public static ReductionMatch Match { get; } = new()
    {
        AxisInertiaKilogramSquareMetres = 6.9, WormShaftInertiaAtAxisKilogramSquareMetres = 0.25, MotorInertiaKilogramSquareMetres = 3.8e-6, DrivingEfficiency = 0.4,
        MotorTorqueNewtonMetres = 0.113, LoadTorqueNewtonMetres = 1.8,
    };

    public static ReductionWindow Window { get; } = new()
    {
        LeastByLoad = 40.0, LeastByInertia = 46.0, LeastByFrictionLag = 150.0, LeastByMicrostep = 25.0, MostByPulses = 470.0, MostBySupply = 7260.0, MostByInertia = 639000.0,
    };

    /// <summary>From one that does not carry the load to one that the controller cannot pulse.</summary>
    public static ReductionResult Several() => Result(
        216.0,
        [
            Point(27.0, Limit.Friction) with { SafeRateRadiansPerSecond = double.NaN, SafeAccelerationRadiansPerSecondSquared = double.NaN, OwnMove = Verdict.Stalls, OwnMargin = -0.2, OwnLoadFactor = null, OwnSettleSeconds = double.NaN },
            Point(108.0, Limit.SupplyVoltage) with { OwnMove = Verdict.DoesNotSettle, OwnLoadFactor = null, OwnSettleSeconds = double.NaN },
            Point(216.0, Limit.PulseRate),
            Point(432.0, Limit.PulseRate) with { AccelerationFailure = null, OwnLoadFactor = new LoadFactor(6.0, AtLeast: true) },
            Point(864.0, Limit.PulseRate) with { OwnMove = null, OwnMargin = double.NaN, OwnLoadFactor = null, OwnSettleSeconds = double.NaN },
        ]);

    public static ReductionPicture Picture(ReductionResult result) => new()
    {
        Title = "Harrow Fell Observatory: what the total reduction changes",
        Sentence = "Polar axis: your reduction of 216 is 10 times smaller than the inertia-matched one of 2177.",
        Result = result,
        AskedRateRadiansPerSecond = 3.0 * Degree,
        AskedAccelerationRadiansPerSecondSquared = 2.67 * Degree,
        ToleranceRadians = 2.0 * Arcsecond,
    };

    public static ReductionResult Result(double own, IReadOnlyList<ReductionPoint> points) => new()
    {
        Points = points,
        Own = points.Single(point => point.Facts.TotalReduction == own),
        Match = Match,
        AtOptimum = Facts(2177.0),
        Window = Window,
        MarginShare = 0.3,
        MovesRun = 211,
    };

    public static ReductionPoint Point(double ratio, Limit bound) => new()
    {
        Facts = Facts(ratio),
        SafeRateRadiansPerSecond = Math.Min(12.0, 1406.0 / ratio) * Degree,
        FirstFailingRateRadiansPerSecond = bound == Limit.PulseRate ? double.NaN : 12.2 * Degree,
        Bound = bound,
        Shares = null,
        SafeAccelerationRadiansPerSecondSquared = 0.2 * ratio * Degree,
        AccelerationFailure = BatchEnd.Stalls,
        AccelerationTriedAtRadiansPerSecond = 3.0 * Degree,
        TorqueAtSlewNewtonMetres = 0.06 * ratio,
        OwnShares = new TorqueShares(1.5, 11.3, false, 1.5e-3, 2.6e-3, 0.0, 5.6e-3, 14.3e-3, 0.161),
        OwnMove = Verdict.Arrives,
        OwnMargin = 0.84,
        OwnLoadFactor = new LoadFactor(5.6, AtLeast: false),
        OwnSettleSeconds = 2.4,
    };

    public static ReductionFacts Facts(double ratio) => new()
    {
        TotalReduction = ratio,
        LastStageRatio = ratio / 144.0,
        FullStepRadians = 3240.0 / ratio * Arcsecond,
        MicrostepRadians = 3240.0 / 64.0 / ratio * Arcsecond,
        FrictionLagRadians = ratio < 40.0 ? double.NaN : 48000.0 / ratio / ratio * Arcsecond,
        TorqueAtRestNewtonMetres = 0.065 * ratio,
        TorqueAtSlewNewtonMetres = 0.064 * ratio,
        NeededAtSlewNewtonMetres = 1.8,
        InertiaRatio = Match.InertiaRatio(ratio),
        AccelerationRadiansPerSecondSquared = Math.Max(0.0, Match.Acceleration(ratio)),
        RateRadiansPerSecond = ratio < 40.0 ? 0.0 : 16.0 * Degree,
        PulseLimitRadiansPerSecond = 1406.0 / ratio * Degree,
        PulsesPerSecond = 213.3 * ratio,
        MotorSpeedRadiansPerSecond = 3.0 * Degree * ratio,
    };
}
