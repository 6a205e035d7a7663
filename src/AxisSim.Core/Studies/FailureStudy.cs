using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Finds why a move fails, by re-running it with one thing changed, and what would cure it.</summary>
internal static class FailureStudy
{
    public static Diagnosis Run(MountSetup setup, MountAxis axis, AxisOutcome outcome, TorqueSpeedCurves curves, double stepSeconds, Action<double>? progress)
    {
        AxisModel model = setup.Axis(axis);
        List<Counterfactual> asked =
        [
            Counterfactual.AmpleVoltage, Counterfactual.WithoutImbalance, Counterfactual.WithoutFriction, Counterfactual.TenthOfInertia,
        ];
        double topSpeed = new MovePlan(setup).At(axis).PeakSpeed * model.Train.TotalRatio;
        if (topSpeed > model.Drive.ChangeoverRadiansPerSecond)
        {
            asked.Add(Counterfactual.WithoutFullStepping);
        }

        if (double.IsFinite(model.Train.ClutchNewtonMetres))
        {
            asked.Add(Counterfactual.RigidClutch);
        }

        if (!WindTorque.Calm(setup.Disturbances))
        {
            asked.Add(Counterfactual.WithoutWind);
        }

        bool[] arrives = new bool[asked.Count];
        Parallel.For(0, asked.Count, i => arrives[i] = Arrival.Of(Changed(setup, axis, asked[i]), axis, stepSeconds));
        List<CounterfactualResult> results = [.. asked.Select((change, i) => new CounterfactualResult(change, arrives[i]))];
        progress?.Invoke(0.2);
        TorqueShares shares = Shares(setup, axis, outcome, curves);
        FailureCause cause = Cause(setup, axis, results, shares, outcome);
        IReadOnlyList<Remedy> remedies = RemedySearch.Run(setup, axis, cause == FailureCause.Clutch, stepSeconds, share => progress?.Invoke(0.2 + (0.8 * share)));
        return new Diagnosis(cause, shares, results, remedies);
    }

    /// <summary>The setup with one thing changed.</summary>
    internal static MountSetup Changed(MountSetup setup, MountAxis axis, Counterfactual change)
    {
        AxisModel model = setup.Axis(axis);
        return change switch
        {
            Counterfactual.AmpleVoltage => setup.With(axis, model with
            {
                Drive = model.Drive with { SupplyVolts = 10.0 * model.Drive.SupplyVolts, SupplyResistanceOhms = 0.0, BrakeLimitVolts = double.PositiveInfinity },
            }),
            Counterfactual.WithoutImbalance => setup with { Load = setup.Load.Scaled(1.0, 0.0) },
            Counterfactual.WithoutFriction => setup.With(axis, model with { Bearings = new AxisBearings(), Train = model.Train with { Worm = WithoutLoss(model.Train.Worm) } }),
            Counterfactual.WithoutWind => Calm(setup),
            Counterfactual.TenthOfInertia => setup with { Load = setup.Load.Scaled(0.1, 1.0) },
            Counterfactual.WithoutFullStepping => setup.With(axis, model with { Drive = model.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity } }),
            _ => setup.With(axis, model with { Train = model.Train with { ClutchNewtonMetres = double.PositiveInfinity } }),
        };
    }

    /// <summary>
    /// The clutch, if it slips or a rigid one cures; resonance, if the torque would do by far and the rotor still loses step; the supply, if ample voltage cures;
    /// else the greatest load among those whose absence cures (losses in the gears go with the loads that cause them).
    /// </summary>
    private static FailureCause Cause(MountSetup setup, MountAxis axis, List<CounterfactualResult> results, TorqueShares shares, AxisOutcome outcome)
    {
        bool Arrives(Counterfactual change) => results.Any(r => r.Change == change && r.Arrives);
        if (outcome.Verdict == Verdict.ClutchSlips || Arrives(Counterfactual.RigidClutch))
        {
            return FailureCause.Clutch;
        }

        if ((outcome.Loss is { FullStepping: true } && Arrives(Counterfactual.WithoutFullStepping)) || Swings(setup, axis, shares, outcome))
        {
            return FailureCause.Resonance;
        }

        if (Arrives(Counterfactual.AmpleVoltage))
        {
            return FailureCause.SupplyVoltage;
        }

        (FailureCause Cause, double Share, Counterfactual Change)[] loads =
        [
            (FailureCause.Imbalance, shares.ImbalanceNewtonMetres, Counterfactual.WithoutImbalance),
            (FailureCause.Wind, shares.WindNewtonMetres, Counterfactual.WithoutWind),
            (FailureCause.Friction, shares.FrictionNewtonMetres, Counterfactual.WithoutFriction),
            (FailureCause.Inertia, shares.InertiaNewtonMetres, Counterfactual.TenthOfInertia),
        ];
        (FailureCause Cause, double Share, Counterfactual Change)[] curing = [.. loads.Where(l => Arrives(l.Change))];
        return curing.Length > 0 ? curing.MaxBy(l => l.Share).Cause : FailureCause.Combined;
    }

    /// <summary>Sync is lost although the closed form gives far more torque than is needed, and more voltage would not raise it.</summary>
    private static bool Swings(MountSetup setup, MountAxis axis, TorqueShares shares, AxisOutcome outcome)
    {
        const double FarMore = 0.6;
        const double HardlyMore = 1.1;
        const double FarLess = 0.7;
        if (outcome.Loss is not { } loss)
        {
            return false;
        }

        AxisModel model = setup.Axis(axis);
        double Formula(double volts) => PullOutLaw.OnDrive(model.Motor, model.Drive, loss.FullStepping, volts, Math.Abs(loss.MotorSpeedRadiansPerSecond));
        double torque = Formula(model.Drive.SupplyVolts);
        double needed = shares.InertiaNewtonMetres + shares.ImbalanceNewtonMetres + shares.WindNewtonMetres + shares.FrictionNewtonMetres + shares.WormLossNewtonMetres;
        return Math.Abs(needed) < FarMore * torque && Formula(10.0 * model.Drive.SupplyVolts) < HardlyMore * torque 
            && PullOutSearch.At(setup, axis, loss.FullStepping, Math.Abs(loss.MotorSpeedRadiansPerSecond)).LeastNewtonMetres < FarLess * torque;
    }

    private static MountSetup Calm(MountSetup setup) =>
        setup with { Disturbances = setup.Disturbances with { WindMetresPerSecond = 0.0, GustMetresPerSecond = 0.0 } };

    /// <summary>Needed torque by cause at the moment of failure, or where the margin is least when sync held.</summary>
    private static TorqueShares Shares(MountSetup setup, MountAxis axis, AxisOutcome outcome, TorqueSpeedCurves curves)
    {
        double time = outcome.Loss?.TimeSeconds ?? outcome.ClutchSlipSeconds ?? outcome.Margin.TimeSeconds;
        var plan = new MovePlan(setup);
        AxisModel model = setup.Axis(axis);
        double speed = Math.Abs(plan.At(axis).Velocity(time)) * model.Train.TotalRatio;
        return Shares(setup, axis, plan, time, curves.At(speed > model.Drive.ChangeoverRadiansPerSecond, speed).LeastNewtonMetres);
    }

    /// <summary>Needed torque by cause at a moment of the plan.</summary>
    internal static TorqueShares Shares(MountSetup setup, MountAxis axis, MovePlan plan, double time, double available)
    {
        double At(MountSetup changed) => Directed(new ShaftNeed(changed, axis, plan).At(time));
        double all = At(setup);
        AxisModel model = setup.Axis(axis);
        MountSetup noLoss = setup.With(axis, model with { Train = WithoutLoss(model.Train) });
        MountSetup noFriction = noLoss.With(axis, noLoss.Axis(axis) with { Bearings = new AxisBearings() });
        double lossless = At(noFriction);
        double friction = At(noLoss) - lossless;
        double gravity = lossless - At(Changed(noFriction, axis, Counterfactual.WithoutImbalance));
        double wind = lossless - At(Calm(noFriction));
        return new TorqueShares(lossless - gravity - wind, gravity, wind, friction, all - lossless - friction, available);
    }

    private static GearTrain WithoutLoss(GearTrain train) => train with
    {
        Stages = [.. train.Stages.Select(stage => stage with { Efficiency = 1.0 })],
        Worm = WithoutLoss(train.Worm),
    };

    private static WormStage WithoutLoss(WormStage worm) => worm with { GivenDrivingEfficiency = 1.0, GivenBackDrivingEfficiency = 1.0 };

    private static double Directed((double Speed, double Torque) need) => need.Speed < 0.0 ? -need.Torque : need.Torque;
}
