using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Dynamics;

/// <summary>Builds the constants and the start state of an axis from its setup.</summary>
internal static class AxisAssembly
{
    public static AxisParameters Parameters(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        double cold = setup.Disturbances.ColdGreaseFactor;
        double inertia = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians);
        double share = model.Flexible?.InertiaShare ?? 0.0;
        double mode = 2.0 * Math.PI * (model.Flexible?.FrequencyHertz ?? 0.0);
        double axisInertia = inertia * (1.0 - share);
        MeshContact stages = StageMesh(train, out bool elastic);
        MeshLoss worm = MeshLoss.FromEfficiencies(train.Worm.DrivingEfficiencyWith(cold), train.Worm.BackDrivingEfficiencyWith(cold));
        double stageEfficiency = train.StageEfficiency;
        double shaftInertia = ShaftInertia(train, elastic);
        double stageRatio = elastic ? train.StageRatio : 1.0;
        return new AxisParameters
        {
            RotorInertia = model.Motor.RotorInertiaKilogramSquareMetres + train.ReflectedTrainInertia - (shaftInertia / (stageRatio * stageRatio)),
            RotorViscous = model.Motor.ViscousNewtonMetreSecondsPerRadian,
            PlanDamping = model.DampingNewtonMetreSecondsPerRadian,
            RotorCoulomb = model.Motor.CoulombTorqueNewtonMetres,
            StageRatio = stageRatio,
            ShaftInertia = shaftInertia,
            StageMesh = stages,
            StageLoss = elastic ? MeshLoss.FromEfficiencies(stageEfficiency, stageEfficiency) : MeshLoss.None,
            WormRatio = elastic ? train.Worm.Ratio : train.TotalRatio,
            Mesh = new MeshContact(
                train.StiffnessNewtonMetresPerRadian,
                2.0 * train.DampingRatio * Math.Sqrt(train.StiffnessNewtonMetresPerRadian * inertia),
                0.5 * train.BacklashRadians),
            Loss = elastic ? worm : TotalLoss(train, cold),
            Clutch = train.ClutchNewtonMetres,
            AxisInertia = axisInertia,
            AxisViscous = model.Bearings.ViscousNewtonMetreSecondsPerRadian * cold,
            AxisCoulomb = model.Bearings.CoulombNewtonMetres * cold,
            AxisBreakaway = Math.Max(model.Bearings.BreakawayNewtonMetres, model.Bearings.CoulombNewtonMetres) * cold,
            PayloadInertia = inertia * share,
            PayloadStiffness = mode * mode * inertia * share,
            PayloadDamping = 2.0 * (model.Flexible?.DampingRatio ?? 0.0) * mode * inertia * share,
        };
    }

    /// <summary>At the planned angle; the axis rests against the flank that carries gravity and wind, wound up and bent by them.</summary>
    public static AxisState Start(AxisParameters parameters, double carried, MotorPlan plan, PeriodicError periodic, double wormTurns)
    {
        MeshContact mesh = parameters.Mesh;
        double twist = carried == 0.0 ? 0.0 : (carried / mesh.Stiffness) + Math.CopySign(mesh.HalfBacklash, carried);
        double rotor = plan.Position(0.0);
        double shaft = rotor / parameters.StageRatio;
        double worm = shaft / parameters.WormRatio;
        double axis = worm + PeriodicErrorLaw.Value(periodic, wormTurns, worm) - twist;
        double share = parameters.PayloadInertia / (parameters.PayloadInertia + parameters.AxisInertia);
        double bend = parameters.PayloadInertia > 0.0 ? -share * carried / parameters.PayloadStiffness : 0.0;
        return new AxisState { Rotor = rotor, Shaft = shaft, Axis = axis, Payload = axis + bend };
    }

    /// <summary>The stages before the worm as one elastic mesh at the worm shaft; never lumped past the worm.</summary>
    private static MeshContact StageMesh(GearTrain train, out bool elastic)
    {
        double after = train.StageRatio;
        double compliance = 0.0;
        double backlash = 0.0;
        foreach (GearStage stage in train.Stages)
        {
            // What is seen at a stage's output turns the worm shaft by less, by the ratio that follows it.
            after /= stage.Ratio;
            backlash += stage.BacklashRadians / after;
            compliance += 1.0 / (stage.StiffnessNewtonMetresPerRadian * after * after);
        }

        // Without an inertia between them the stage's spring is only in series with the rotor's field, which is far softer at the worm shaft.
        elastic = compliance > 0.0 && ShaftInertia(train, true) > 0.0;
        return elastic
            ? new MeshContact(1.0 / compliance, 2.0 * 0.05 * Math.Sqrt(ShaftInertia(train, true) / compliance), 0.5 * backlash)
            : default;
    }

    private static double ShaftInertia(GearTrain train, bool elastic) =>
        elastic ? train.Worm.InertiaKilogramSquareMetres + train.Stages[^1].InertiaKilogramSquareMetres : 0.0;

    /// <summary>Loss from motor shaft to axis with all stages rigid.</summary>
    public static MeshLoss TotalLoss(GearTrain train, double coldGreaseFactor) =>
        Lumped(
            MeshLoss.FromEfficiencies(train.Worm.DrivingEfficiencyWith(coldGreaseFactor), train.Worm.BackDrivingEfficiencyWith(coldGreaseFactor)),
            train.StageEfficiency);

    /// <summary>The worm's loss seen at the motor through rigid stages, whose own loss adds in either direction.</summary>
    private static MeshLoss Lumped(MeshLoss worm, double stageEfficiency)
    {
        double driving = stageEfficiency / (1.0 + worm.Driving);
        double back = 1.0 - worm.BackDriving;
        return MeshLoss.FromEfficiencies(driving, back > 0.0 ? back * stageEfficiency : back / stageEfficiency);
    }
}
