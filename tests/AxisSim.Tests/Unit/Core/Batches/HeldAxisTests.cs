using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Batches;

/// <summary>An axis that has ended its own slew is left where its outcome is known, and nowhere else.</summary>
public sealed class HeldAxisTests
{
    private const double Quick = 8.0 * BenchmarkCase.Degree;

    [Theory]
    [InlineData(MountAxis.Polar)]
    [InlineData(MountAxis.Declination)]
    public void ALightAxisIsLeftSoonAfterItsOwnSlew(MountAxis axis)
    {
        LaneCase item = Ready(Light(axis), axis);
        Assert.InRange(item.HeldFromSeconds, 1.0, 0.5 * item.UntilSeconds);
    }

    [Fact]
    public void ItIsWatchedToTheEndWhereSomethingMayStillMoveIt()
    {
        MountSetup light = Light(MountAxis.Polar);
        MountSetup[] setups =
        [
            light with { Disturbances = light.Disturbances with { WindMetresPerSecond = 4.0, DragCoefficient = 1.0, AreaSquareMetres = 0.1, LeverMetres = 0.3, GustMetresPerSecond = 6.0, GustStartSeconds = 20.0, GustSeconds = 5.0 } },
            light.WithDrive(MountAxis.Polar, drive => drive with { TrackingCurrentAmperes = 0.3 * drive.TrackingCurrentAmperes }),
            light.WithDrive(MountAxis.Polar, drive => drive with { ChangeoverRadiansPerSecond = 1e-3 }),
            light.WithDrive(MountAxis.Polar, drive => drive with { SupplyVolts = 2.0 }),
            light.Edit(MountAxis.Polar, axis => axis with { Train = axis.Train with { ClutchNewtonMetres = 2.0 } }),
            light with { Load = light.Load.Scaled(1.0, 60.0) },
        ];
        Assert.All(setups, setup => AssertWatched(Ready(setup, MountAxis.Polar)));
        AssertWatched(new LaneCase(0, new BatchCase(light, MountAxis.Polar), new BatchOptions { Depth = BatchDepth.Settling }));
    }

    [Fact]
    public void ItEndsAsWhenWatchedToTheEnd()
    {
        var random = new Random(20261128);
        foreach (MountAxis axis in Enum.GetValues<MountAxis>())
        {
            BatchCase[] cases = [.. Enumerable.Range(0, 24).Select(i => new BatchCase(Varied(Short(axis), axis, i, random), axis))];
            BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Threads = 2 });
            Assert.Contains(cases.Select((item, i) => Ready(item.Setup, axis).HeldFromSeconds < Ready(item.Setup, axis).UntilSeconds && results[i].End == BatchEnd.Arrives), early => early);
            Assert.Contains(results, result => result.End != BatchEnd.Arrives);
            Assert.Equal([.. cases.Select(BatchTests.Single)], results);
        }
    }

    private static void AssertWatched(LaneCase item) => Assert.Equal(item.UntilSeconds, item.HeldFromSeconds);

    private static LaneCase Ready(MountSetup setup, MountAxis axis) => new(0, new BatchCase(setup, axis), new BatchOptions());

    /// <summary>A mount of which one axis is much sooner done than the other.</summary>
    private static MountSetup Light(MountAxis axis) =>
        ScenarioReader.ReadFile(Repository.PathOf("scenarios", "light-refractor.toml"), []).Scenario!.Setup.WithSlewRate(axis, Quick);

    /// <summary>The same over few degrees.</summary>
    private static MountSetup Short(MountAxis axis)
    {
        MountSetup setup = Light(axis);
        MountPose start = setup.Move.Start;
        MountSetup near = setup with { Move = setup.Move with { End = new MountPose(start.PolarRadians + (3.0 * BenchmarkCase.Degree), start.DeclinationRadians + (3.0 * BenchmarkCase.Degree)) } };
        MountAxis other = axis == MountAxis.Polar ? MountAxis.Declination : MountAxis.Polar;
        return near.WithRampTime(axis, 0.2).WithSlewRate(other, BenchmarkCase.Degree);
    }

    private static MountSetup Varied(MountSetup setup, MountAxis axis, int i, Random random) => setup
        .WithSlewRate(axis, (4.0 + (16.0 * random.NextDouble())) * BenchmarkCase.Degree)
        .WithRampTime(axis, 0.02 + (0.2 * random.NextDouble()))
        .Loaded(axis, i % 3 == 0 ? 1.0 + (40.0 * random.NextDouble()) : 1.0)
        .WithDrive(axis, drive => drive with { SlewCurrentAmperes = (0.2 + (0.8 * random.NextDouble())) * drive.SlewCurrentAmperes });
}
