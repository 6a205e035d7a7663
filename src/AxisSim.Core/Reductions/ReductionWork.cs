using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>What is known so far of one reduction.</summary>
internal sealed class ReductionWork
{
    private readonly RateSearch? ownRates;
    private readonly ValueSearch around;

    public ReductionWork(MountSetup setup, MountAxis axis, ReductionLaw law, double totalRatio, double marginShare)
    {
        Axis = axis;
        Setup = setup.WithReduction(axis, totalRatio);
        Loaded = Setup.Loaded(axis, LoadFactors.OfMargin(marginShare));
        Facts = law.At(totalRatio);
        Gain = totalRatio * law.Match.DrivingEfficiency;
        (double top, Top) = RateCap.Of(Setup, axis, Model.Motion.RampInUseSeconds);

        // Where the closed form sees no rate at all, the simulation is asked about the file's own: it may know better.
        double own = Model.Motion.SlewRateRadiansPerSecond;
        double guess = Facts.RateRadiansPerSecond > 0.0 ? Facts.RateRadiansPerSecond : own;
        if (totalRatio == setup.Axis(axis).Train.TotalRatio)
        {
            ownRates = RateSearch.Of(Loaded, axis);
        }

        around = ValueSearch.Around(Math.Max(ReductionStudy.LeastRateShare * own, Model.Motion.StartRateRadiansPerSecond), guess, top);
        Accelerations = ValueSearch.Around(0.0, 0.0, 0.0);
    }

    public MountAxis Axis { get; }

    /// <summary>The scenario at this reduction.</summary>
    public MountSetup Setup { get; }

    /// <summary>The same with the load that stands for the margin.</summary>
    public MountSetup Loaded { get; }

    public ReductionFacts Facts { get; }

    /// <summary>Axis torque per motor torque when driving.</summary>
    public double Gain { get; }

    public AxisModel Model => Setup.Axis(Axis);

    /// <summary>The greatest rate tried up to which all arrive, rad/s; null when there is none.</summary>
    public double? GreatestRate => ownRates is { } search ? search.Line.Good is { } place ? search.Rate(place) : null : around.Good;

    /// <summary>The least rate that fails, rad/s; null when there is none.</summary>
    public double? FailingRate => ownRates is { } search ? search.Line.Bad is { } place ? search.Rate(place) : null : around.Bad;

    /// <summary>The search for the greatest rate. The scenario's own reduction is asked as every other command asks; the others from where paper expects their edge, for many of them lie far from the scenario's rate.</summary>
    public EdgeQuestion RateQuestion => ownRates is { } search
        ? new EdgeQuestion(search.Line, place => [new BatchCase(AtRate(search.Rate(place)), Axis)])
        : around.Question(rate => [new BatchCase(AtRate(rate), Axis)]);

    public ValueSearch Accelerations { get; private set; }

    public double AccelerationRate { get; private set; } = double.NaN;

    public Limit Bound { get; set; }

    public TorqueShares? Shares { get; set; }

    /// <summary>What ends the search when no rate fails.</summary>
    public Limit Top { get; }

    /// <summary>The loaded setup at a slew rate, with the scenario's ramp time.</summary>
    public MountSetup AtRate(double rate) => Loaded.WithRampTime(Axis, Model.Motion.RampInUseSeconds).WithSlewRate(Axis, rate);

    /// <summary>The loaded setup with a greatest acceleration.</summary>
    public MountSetup AtAcceleration(double acceleration) => Loaded.WithSlewRate(Axis, AccelerationRate).WithAcceleration(Axis, acceleration);

    /// <summary>Puts the search of accelerations together, once the greatest rate is known.</summary>
    public void PrepareAccelerations()
    {
        if (GreatestRate is not { } safe)
        {
            return;
        }

        AxisMotion motion = Model.Motion;
        double most = Math.Min(motion.SlewRateRadiansPerSecond, ReductionStudy.AccelerationRateShare * Facts.RateRadiansPerSecond);
        AccelerationRate = Math.Max(FailingRate is null ? most : Math.Min(most, safe), motion.StartRateRadiansPerSecond);
        double top = (motion with { SlewRateRadiansPerSecond = AccelerationRate, Ramp = Ramp.OfSeconds(SwingSeconds) }).PeakAcceleration;
        Accelerations = ValueSearch.Around(0.0, Math.Min(0.8 * Facts.AccelerationRadiansPerSecondSquared, top), top);
    }

    /// <summary>One swing of the axis on the stiffness of its train, s: a shorter ramp is a jolt that the train takes up, and no acceleration of the axis.</summary>
    private double SwingSeconds => 2.0 * Math.PI * Math.Sqrt(Setup.Load.Inertia(Axis, Setup.Move.Start.DeclinationRadians) / Model.Train.StiffnessNewtonMetresPerRadian);
}
