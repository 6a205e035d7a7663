using AxisSim.Core.Envelopes;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Comparisons;

/// <summary>A candidate with its mount and what the closed form says of it.</summary>
internal sealed class Entrant
{
    private readonly double[] bounds;
    private readonly Limit[] limits;

    public Entrant(MountSetup mount, IReadOnlyList<MountAxis> axes, Candidate candidate, int index, ComparisonOptions options)
    {
        (Candidate, Index, Axes) = (candidate, index, axes);
        Setup = CandidateSetup.Of(mount, axes, candidate, options.CurrentShare);
        Ramps = [.. axes.Select(axis => mount.Axis(axis).Motion.RampInUseSeconds)];
        Least = [.. axes.Select(axis => ComparisonStudy.LeastShare * mount.Axis(axis).Motion.SlewRateRadiansPerSecond)];
        Loaded = [.. axes.Select(axis => Setup.Loaded(axis, options.LoadFactor))];
        bounds = new double[axes.Count];
        limits = new Limit[axes.Count];
        for (int i = 0; i < axes.Count; i++)
        {
            (double top, Limit limit) = RateCap.Of(Loaded[i], axes[i], Ramps[i]);
            bounds[i] = RateBound.Of(Loaded[i], axes[i], Ramps[i], Least[i], top);
            limits[i] = Expected(i, top, limit);
        }

        LeastSeconds = Hopeful ? SlewSeconds(new MovePlan(At(bounds))) : double.PositiveInfinity;
    }

    public Candidate Candidate { get; }

    public int Index { get; }

    public IReadOnlyList<MountAxis> Axes { get; }

    /// <summary>The mount with the candidate, at the mount's own rates.</summary>
    public MountSetup Setup { get; }

    /// <summary>The same with the load factor, axis by axis.</summary>
    public IReadOnlyList<MountSetup> Loaded { get; }

    public IReadOnlyList<double> Ramps { get; }

    /// <summary>Least rates that are tried, rad/s.</summary>
    public IReadOnlyList<double> Least { get; }

    /// <summary>Whether the closed form leaves a useful rate on each axis.</summary>
    public bool Hopeful => !bounds.Any(double.IsNaN);

    /// <summary>A time on target that it cannot beat, s.</summary>
    public double LeastSeconds { get; }

    /// <summary>Greatest rate by the closed form, rad/s.</summary>
    public double Bound(int axis) => bounds[axis];

    // An axis that is not compared keeps its own motion and holds nobody up.
    private double SlewSeconds(MovePlan plan) => Axes.Max(axis => (axis == MountAxis.Polar ? plan.PolarProfile : plan.DeclinationProfile).DurationSeconds);

    /// <summary>What the closed form says stands against a greater rate.</summary>
    private Limit Expected(int i, double top, Limit limit)
    {
        if (top < Least[i] || bounds[i] >= top)
        {
            return limit;
        }

        double ample = RateBound.Of(OneChange.AmpleVoltage.Apply(Loaded[i], Axes[i]), Axes[i], Ramps[i], Least[i], top);
        return ample > bounds[i] || (double.IsNaN(bounds[i]) && !double.IsNaN(ample)) ? Limit.SupplyVoltage : Heaviest(Loaded[i], Axes[i]);
    }

    // Without a run no more can be told than which load asks for most at the hardest moment.
    private static Limit Heaviest(MountSetup loaded, MountAxis axis)
    {
        TorqueShares shares = TorqueShares.Hardest(loaded, axis);
        return new[]
        {
            (Limit: Limit.Friction, Share: shares.BearingsNewtonMetres), (Limit: Limit.Imbalance, Share: shares.ImbalanceNewtonMetres),
            (Limit: Limit.Wind, Share: shares.WindNewtonMetres), (Limit: Limit.Inertia, Share: shares.InertiaNewtonMetres),
        }.MaxBy(load => load.Share).Limit;
    }

    /// <summary>The mount with the candidate at given rates.</summary>
    public MountSetup At(IReadOnlyList<double> rates) =>
        Enumerable.Range(0, Axes.Count).Aggregate(Setup, (made, i) => EnvelopeStudy.With(made, Axes[i], Ramps[i], rates[i]));

    /// <summary>What can be told of it without a run.</summary>
    public CandidateResult Unsimulated(CandidateFate fate) => new()
    {
        Candidate = Candidate,
        Setup = Setup,
        Index = Index,
        Fate = fate,
        SlewSeconds = double.IsFinite(LeastSeconds) ? LeastSeconds : double.NaN,
        Axes = [.. Axes.Select((_, i) => Axis(i, Setup, limits[i]))],
    };

    /// <summary>One axis of the result, with what does not need a run.</summary>
    public CandidateAxis Axis(int i, MountSetup at, Limit limit)
    {
        DerivedFacts facts = Facts.Of(at, Axes[i]);
        StepperMotor motor = Candidate.Motor.Motor;
        return new CandidateAxis
        {
            Axis = Axes[i],
            BoundRadiansPerSecond = bounds[i],
            Limit = limit,
            LimitCelsius = motor.Insulation.LimitCelsius(),
            Facts = facts,
            InertiaRatio = facts.ReflectedInertiaKilogramSquareMetres / motor.RotorInertiaKilogramSquareMetres,
        };
    }
}
