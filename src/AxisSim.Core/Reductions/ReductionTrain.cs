using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>The same axis with another total reduction: the last stage before the worm gets another ratio, all else stays.</summary>
/// <remarks>
/// Inertias, efficiencies, stiffness and backlash of stages and worm stay what they are at their own shafts; seen from the motor they change with the ratio by
/// themselves. A worm without a stage before it gets one without loss and inertia. Below the worm's own ratio the stage steps up: physics allows it.
/// </remarks>
public static class ReductionTrain
{
    /// <summary>The setup with another total reduction of an axis; the setup itself when it has that one.</summary>
    public static MountSetup With(MountSetup setup, MountAxis axis, double totalRatio)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(totalRatio);
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        return totalRatio == train.TotalRatio ? setup : setup.With(axis, model with { Train = With(train, totalRatio) });
    }

    /// <summary>Ratio of the last stage at a total reduction; below one it steps up.</summary>
    public static double LastStageRatio(GearTrain train, double totalRatio)
    {
        ArgumentNullException.ThrowIfNull(train);
        return totalRatio / train.Worm.Ratio / Before(train);
    }

    /// <summary>Reduction of the stages that keep theirs: all but the last.</summary>
    private static double Before(GearTrain train) => train.Stages.SkipLast(1).Aggregate(1.0, (product, stage) => product * stage.Ratio);

    private static GearTrain With(GearTrain train, double totalRatio)
    {
        double last = LastStageRatio(train, totalRatio);
        GearStage changed = train.Stages.Count > 0 ? train.Stages[^1] : new GearStage { Name = "stage", DrivenTeeth = 1.0, DrivingTeeth = 1.0 };
        return train with { Stages = [.. train.Stages.SkipLast(1), changed with { DrivenTeeth = last, DrivingTeeth = 1.0 }] };
    }
}
