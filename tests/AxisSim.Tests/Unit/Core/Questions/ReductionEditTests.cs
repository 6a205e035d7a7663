using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Questions;

/// <summary>Another total reduction changes the last stage before the worm and nothing else.</summary>
public sealed class ReductionEditTests
{
    private static readonly MountSetup Heavy = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "heavy-reflector.toml"), []).Scenario!.Setup;

    [Fact]
    public void The_own_reduction_is_the_setup_itself() => Assert.Same(Heavy, Heavy.WithReduction(MountAxis.Polar, 216.0));

    [Fact]
    public void Another_one_keeps_inertias_and_reflects_them_by_its_own_ratio()
    {
        // 432 / 144 = 3; (90 + 30) g cm2 behind it: 120/9 = 13.3 g cm2 at the motor.
        GearTrain train = Heavy.WithReduction(MountAxis.Polar, 432.0).Polar!.Train;
        Assert.Equal(432.0, train.TotalRatio, 1e-9);
        Assert.Equal(3.0, Assert.Single(train.Stages).Ratio, 1e-12);
        Assert.Equal(120e-7 / 9.0, train.ReflectedTrainInertia, 1e-15);
        Assert.Equal((Heavy.Polar!.Train.Worm, Heavy.Polar.Train.DrivingEfficiency), (train.Worm, train.DrivingEfficiency));
        Assert.Same(Heavy.Declination, Heavy.WithReduction(MountAxis.Polar, 432.0).Declination);
    }

    [Fact]
    public void Below_the_worm_the_stage_steps_up()
    {
        GearTrain train = Heavy.WithReduction(MountAxis.Polar, 36.0).Polar!.Train;
        Assert.Equal(0.25, SetupEdits.LastStageRatio(train, 36.0), 1e-12);
        Assert.Equal(36.0, train.TotalRatio, 1e-9);
    }

    [Fact]
    public void Of_several_stages_the_last_is_changed_and_a_worm_alone_gets_a_belt()
    {
        GearTrain own = Heavy.Polar!.Train;
        MountSetup two = Heavy.With(MountAxis.Polar, Heavy.Polar with { Train = own with { Stages = [new GearStage { Name = "spur", DrivenTeeth = 40, DrivingTeeth = 20, Efficiency = 0.98 }, own.Stages[0]] } });
        GearTrain changed = two.WithReduction(MountAxis.Polar, 864.0).Polar!.Train;
        Assert.Equal([2.0, 3.0], changed.Stages.Select(stage => stage.Ratio));
        Assert.Equal(two.Polar!.Train.StageEfficiency, changed.StageEfficiency, 1e-12);
        MountSetup none = Heavy.With(MountAxis.Polar, Heavy.Polar with { Train = own with { Stages = [] } });
        GearTrain added = none.WithReduction(MountAxis.Polar, 288.0).Polar!.Train;
        Assert.Equal(288.0, added.TotalRatio, 1e-9);
        Assert.Equal(SetupEdits.BeltEfficiency * own.Worm.DrivingEfficiency, added.DrivingEfficiency, 1e-12);
        Assert.Equal(30e-7 / 4.0, added.ReflectedTrainInertia, 1e-15);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-5.0)]
    public void A_reduction_that_is_none_is_refused(double ratio) => Assert.Throws<ArgumentOutOfRangeException>(() => Heavy.WithReduction(MountAxis.Polar, ratio));
}
