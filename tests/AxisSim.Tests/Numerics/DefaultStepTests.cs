using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Numerics;

/// <summary>What is promised of the default step, 50 us, against the program's own runs at 1 us, on the shipped scenarios.</summary>
[Trait("speed", "slow")]
public sealed class DefaultStepTests
{
    private const double Fine = 1e-6;

    // The promises.
    private const double FinalArcseconds = 0.02;
    private const double FinalAfloatArcseconds = 0.1;
    private const double SettleSeconds = 1e-3;
    private const double GrazeArcseconds = 0.05;
    private const double BoundaryShare = 0.01;

    /// <summary>Final position and settle time. The rescued move crosses its backlash while it settles, and its last peak grazes the band.</summary>
    [Theory]
    [InlineData("nominal", MountAxis.Polar, FinalArcseconds)]
    [InlineData("nominal-opposing", MountAxis.Polar, FinalArcseconds)]
    [InlineData("heavy-reflector", MountAxis.Polar, FinalArcseconds)]
    [InlineData("heavy-reflector", MountAxis.Declination, FinalArcseconds)]
    [InlineData("heavy-reflector-rescued", MountAxis.Polar, FinalAfloatArcseconds)]
    [InlineData("heavy-reflector-rescued", MountAxis.Declination, FinalArcseconds)]
    public void FinalPositionAndSettleTime(string scenario, MountAxis axis, double tolerance)
    {
        MountSetup setup = Setup(scenario);
        AxisResult normal = MoveStudy.Run(setup, axis, new MoveOptions { Explain = false });
        AxisResult fine = MoveStudy.Run(setup, axis, new MoveOptions { Explain = false, StepSeconds = Fine });
        Assert.Equal(MoveEnd.Arrives, fine.Outcome.Verdict);
        Assert.Equal(MoveEnd.Arrives, normal.Outcome.Verdict);
        Assert.Equal(0.0, (normal.Outcome.Offset.TotalRadians - fine.Outcome.Offset.TotalRadians) / BenchmarkCase.Arcsecond, tolerance);
        Assert.Equal(0.0, (normal.Outcome.Settling!.RestRadians - fine.Outcome.Settling!.RestRadians) / BenchmarkCase.Arcsecond, FinalArcseconds);
        double least = fine.Outcome.Settling.AgainstRestSeconds!.Value;
        double most = least;
        foreach (double graze in new[] { -GrazeArcseconds, GrazeArcseconds })
        {
            // Where a peak grazes the band, a band that much wider or narrower tells which times are as good; asked at the same fine step, for a coarser one has an error of its own.
            MountSetup other = setup with { Move = setup.Move with { SettleToleranceRadians = setup.Move.SettleToleranceRadians + (graze * BenchmarkCase.Arcsecond) } };
            double time = MoveStudy.Run(other, axis, new MoveOptions { Explain = false, StepSeconds = Fine }).Outcome.Settling!.AgainstRestSeconds!.Value;
            (least, most) = (Math.Min(least, time), Math.Max(most, time));
        }

        Assert.InRange(normal.Outcome.Settling.AgainstRestSeconds!.Value, least - SettleSeconds, most + SettleSeconds);
    }

    /// <summary>The stall boundary, as a load factor under the small disturbance: at 1 us the move arrives 1 % below it and fails 1 % above.</summary>
    [Theory]
    [InlineData("heavy-reflector-rescued", MountAxis.Polar)]
    [InlineData("heavy-reflector", MountAxis.Polar)]
    public void StallBoundary(string scenario, MountAxis axis)
    {
        MountSetup setup = Setup(scenario);
        Assert.True(setup.Disturbances.SyncProbe);
        LoadFactor edge = MoveAnswers.Of(setup, axis, arrives: true, new QuestionOptions()).LoadFactor!;
        Assert.False(edge.AtLeast);

        // The study brackets the edge to 1 % and gives the lower end.
        Assert.True(ScalarArrival.Of(setup, axis, Fine, edge.Value * (1.0 - BoundaryShare)), $"fails at 1 us just below {edge.Value}");
        Assert.False(ScalarArrival.Of(setup, axis, Fine, edge.Value * 1.01 * (1.0 + BoundaryShare)), $"arrives at 1 us just above {edge.Value}");
    }

    private static MountSetup Setup(string scenario) =>
        ScenarioReader.ReadFile(Path.Combine(Repository.Root, "scenarios", scenario + ".toml"), []).Scenario!.Setup;
}
