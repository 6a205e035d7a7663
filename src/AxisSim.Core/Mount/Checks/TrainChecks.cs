using AxisSim.Core.Bounds;
using AxisSim.Core.Gearing;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of a transmission.</summary>
internal static class TrainChecks
{
    public static void Check(ProblemCollector found, string owner, GearTrain train, double coldGreaseFactor)
    {
        found.At(owner, nameof(AxisModel.Train));
        bool worm = found.Has(train.Worm);
        bool stages = found.Has(train.Stages);
        found.Check(train.BacklashRadians, TrainBounds.Backlash);
        found.Check(train.StiffnessNewtonMetresPerRadian, TrainBounds.Stiffness);
        found.Check(train.DampingRatio, TrainBounds.DampingRatio);
        found.Check(train.ClutchNewtonMetres, TrainBounds.Clutch);
        if (worm)
        {
            Worm(found, owner, train.Worm, coldGreaseFactor);
        }

        double ratio = worm ? train.Worm.Ratio : double.NaN, efficiency = 1.0;
        for (int i = 0; stages && i < train.Stages.Count; i++)
        {
            found.At(owner, "Train.Stages", i);
            if (found.Has(train.Stages[i], ""))
            {
                Stage(found, train.Stages[i]);
                Elastic(found, train, train.Stages[i]);
            }

            ratio *= train.Stages[i]?.Ratio ?? double.NaN;
            efficiency *= train.Stages[i]?.Efficiency ?? double.NaN;
        }

        // What is not a number has been told above.
        found.At(owner, nameof(AxisModel.Train));
        if (stages && train.Stages.Count > 0 && !double.IsNaN(ratio) && !TrainBounds.TotalReduction.Holds(ratio))
        {
            found.Add(nameof(train.TotalRatio), ProblemCollector.Text(ratio), TrainBounds.TotalReduction.Allowed);
        }

        if (!double.IsNaN(efficiency) && !TrainBounds.StagesEfficiency.Holds(efficiency))
        {
            found.Add(nameof(train.Stages), $"stages that pass on {ProblemCollector.Text(efficiency)} of the power together", TrainBounds.StagesEfficiency.Allowed);
        }
    }

    private static void Stage(ProblemCollector found, GearStage stage)
    {
        if (!(stage.DrivenTeeth > 0.0 && stage.DrivingTeeth > 0.0 && double.IsFinite(stage.DrivenTeeth) && double.IsFinite(stage.DrivingTeeth)))
        {
            found.Add(nameof(stage.DrivenTeeth), $"{ProblemCollector.Text(stage.DrivenTeeth)} over DrivingTeeth {ProblemCollector.Text(stage.DrivingTeeth)}", "finite numbers above 0");
        }
        else
        {
            found.Check(stage.Ratio, TrainBounds.StageRatio);
        }

        found.Check(stage.Efficiency, TrainBounds.Efficiency);
        found.Check(stage.InertiaKilogramSquareMetres, TrainBounds.WheelInertia);
        found.Check(stage.BacklashRadians, TrainBounds.StageBacklash);
        found.Check(stage.StiffnessNewtonMetresPerRadian, TrainBounds.StageStiffness);
    }

    // An elastic stage swings between two inertias, and play needs something to meet: neither has an honest default.
    private static void Elastic(ProblemCollector found, GearTrain train, GearStage stage)
    {
        bool elastic = double.IsFinite(stage.StiffnessNewtonMetresPerRadian);
        if (stage.BacklashRadians > 0.0 && !elastic)
        {
            found.Add(nameof(stage.BacklashRadians), $"{ProblemCollector.Text(stage.BacklashRadians)} without a stiffness", "backlash together with the stiffness of the stage");
        }

        double behind = (train.Stages[^1]?.InertiaKilogramSquareMetres ?? 0.0) + (train.Worm?.InertiaKilogramSquareMetres ?? 0.0);
        if (elastic && !(behind > 0.0))
        {
            found.Add(nameof(stage.StiffnessNewtonMetresPerRadian), $"{ProblemCollector.Text(stage.StiffnessNewtonMetresPerRadian)} without an inertia behind it", "stiffness together with the inertia of the last stage's wheel or of the worm");
        }
    }

    private static void Worm(ProblemCollector found, string owner, WormStage worm, double coldGreaseFactor)
    {
        found.At(owner, "Train.Worm");
        found.Check(worm.Starts, TrainBounds.Starts);
        found.Check(worm.WheelTeeth, TrainBounds.WheelTeeth);
        found.Check(worm.PressureAngleRadians, TrainBounds.PressureAngle);
        found.Check(worm.InertiaKilogramSquareMetres, TrainBounds.WheelInertia);
        found.CheckGiven(worm.GivenDrivingEfficiency, TrainBounds.Efficiency);
        found.CheckGiven(worm.GivenBackDrivingEfficiency, TrainBounds.BackEfficiency);
        if (worm.GivenDrivingEfficiency is null)
        {
            Geometry(found, worm, coldGreaseFactor);
        }

        if (found.Has(worm.PeriodicError))
        {
            PeriodicError error = worm.PeriodicError;
            found.Check(error.FirstAmplitudeRadians, TrainBounds.PeriodicAmplitude);
            found.Check(error.FirstPhaseRadians, TrainBounds.Phase);
            found.Check(error.SecondAmplitudeRadians, TrainBounds.PeriodicAmplitude);
            found.Check(error.SecondPhaseRadians, TrainBounds.Phase);
            found.Check(error.RunoutAmplitudeRadians, TrainBounds.RunoutAmplitude);
            found.Check(error.RunoutPhaseRadians, TrainBounds.Phase);
        }
    }

    private static void Geometry(ProblemCollector found, WormStage worm, double coldGreaseFactor)
    {
        found.Check(worm.LeadAngleRadians, TrainBounds.LeadAngle);
        found.Check(worm.FrictionCoefficient, TrainBounds.Friction);
        if (worm.GivenBackDrivingEfficiency is { } back)
        {
            found.Add(nameof(worm.GivenBackDrivingEfficiency), $"{ProblemCollector.Text(back)} without GivenDrivingEfficiency", "both efficiencies, or neither and lead angle with friction");
        }

        double efficiency = WormLaw.DrivingEfficiency(worm.LeadAngleRadians, worm.FrictionCoefficient * coldGreaseFactor, worm.PressureAngleRadians);
        if (efficiency < TrainBounds.LeastDrivingEfficiency)
        {
            found.Add(
                nameof(worm.FrictionCoefficient),
                $"{ProblemCollector.Text(worm.FrictionCoefficient)}, with which the worm drives with an efficiency of {ProblemCollector.Text(efficiency)} only (cold grease and lead angle included)",
                $"friction, lead angle and cold grease with a driving efficiency of {ProblemCollector.Text(TrainBounds.LeastDrivingEfficiency)} or more");
        }
    }
}
