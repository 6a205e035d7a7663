using AxisSim.Core.Batches;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Batches;

/// <summary>What comes of a case does not depend on its company, and is what a single run says.</summary>
public sealed class BatchTests
{
    private static readonly BatchWidth[] Widths = [BatchWidth.One, BatchWidth.Two, BatchWidth.Four, BatchWidth.Eight];

    [Theory]
    [InlineData("heavy-reflector")]
    [InlineData("heavy-reflector-stalls")]
    [InlineData("heavy-reflector-rescued")]
    [InlineData("light-refractor")]
    [InlineData("nominal")]
    [InlineData("nominal-opposing")]
    [InlineData("two-stage-newtonian")]
    [Trait("speed", "slow")]
    public void ShippedScenariosEndAsASingleRunSays(string name)
    {
        MountSetup setup = ScenarioReader.ReadFile(Repository.PathOf("scenarios", name + ".toml"), []).Scenario!.Setup;
        foreach (MountAxis axis in Enum.GetValues<MountAxis>())
        {
            if ((axis == MountAxis.Polar ? setup.Polar : setup.Declination) is null)
            {
                continue;
            }

            double[] factors = [1.0, 1.3, 1.7, 2.2, 3.0, 4.5];
            BatchCase[] cases = [.. factors.Select(f => new BatchCase(setup.Loaded(axis, f), axis))];
            BatchResult[] results = BatchStudy.Run(cases, new BatchOptions());
            for (int i = 0; i < cases.Length; i++)
            {
                Assert.Equal(Single(cases[i]), results[i]);
            }
        }
    }

    [Fact]
    public void NeitherWidthNorThreadsNorOrderNorCompanyChangeABit()
    {
        List<BatchCase> cases = Mixed();
        BatchResult[] expected = [.. cases.Select(Single)];
        Assert.Contains(expected, r => r.End == BatchEnd.Stalls);
        Assert.Contains(expected, r => r.End == BatchEnd.Arrives);
        Assert.Contains(expected, r => r.End == BatchEnd.ClutchSlips);
        foreach (BatchWidth width in Widths)
        {
            Assert.Equal(expected, BatchStudy.Run(cases, new BatchOptions { Width = width, Threads = 2 }));
        }

        var random = new Random(20261125);
        for (int round = 0; round < 3; round++)
        {
            int[] order = [.. Enumerable.Range(0, cases.Count).OrderBy(_ => random.Next())];
            int some = random.Next(1, cases.Count);
            BatchResult[] shuffled = BatchStudy.Run([.. order.Take(some).Select(i => cases[i])], new BatchOptions { Threads = 1 + round });
            Assert.Equal([.. order.Take(some).Select(i => expected[i])], shuffled);
        }
    }

    [Theory]
    [InlineData("heavy-reflector")]
    [InlineData("heavy-reflector-stalls")]
    [InlineData("light-refractor")]
    [InlineData("nominal")]
    [InlineData("two-stage-newtonian")]
    [Trait("speed", "slow")]
    public void SettlingAndHeatAreThoseOfASingleRun(string name)
    {
        MountSetup setup = ScenarioReader.ReadFile(Repository.PathOf("scenarios", name + ".toml"), []).Scenario!.Setup;
        double[] factors = [1.0, 1.2, 1.9];
        BatchCase[] cases = [.. factors.Select(f => new BatchCase(setup.Loaded(MountAxis.Polar, f), MountAxis.Polar))];
        BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling });
        for (int i = 0; i < cases.Length; i++)
        {
            AxisOutcome outcome = MoveStudy.Run(cases[i].Setup, MountAxis.Polar, new MoveOptions { Explain = false }).Outcome;
            Assert.Equal(outcome.Verdict.ToString(), results[i].End.ToString());
            Assert.Equal(outcome.SlewSeconds, results[i].SlewSeconds);
            if (outcome.Verdict is Verdict.Arrives or Verdict.DoesNotSettle)
            {
                Assert.Equal(outcome.Settling!.AgainstRestSeconds ?? double.NaN, results[i].SettleSeconds);
                Assert.Equal(outcome.Power.ContinuousCelsius, results[i].ContinuousCelsius);
            }
        }
    }

    [Fact]
    public void SettlingDoesNotDependOnWidthOrCompany()
    {
        List<BatchCase> cases = [.. Mixed(2.0).Take(23)];
        BatchResult[] one = BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling, Width = BatchWidth.One, Threads = 1 });
        Assert.Contains(one, r => double.IsFinite(r.SettleSeconds));
        foreach (BatchWidth width in Widths)
        {
            Assert.Equal(one, BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling, Width = width, Threads = 2 }));
        }

        Assert.Equal(one[17], Assert.Single(BatchStudy.Run([cases[17]], new BatchOptions { Depth = BatchDepth.Settling })));
    }

    [Fact]
    public void EachCaseIsReportedOnce()
    {
        List<BatchCase> cases = Mixed();
        int[] times = new int[cases.Count];
        BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Finished = (i, r) => Interlocked.Increment(ref times[i]) });
        Assert.All(times, count => Assert.Equal(1, count));
        Assert.Equal(cases.Count, results.Length);
    }

    [Fact]
    public void CasesAlikeAreToldEachAndDepthsMayDiffer()
    {
        List<BatchCase> cases = [.. Mixed(2.0).Take(12)];
        BatchCase[] settling = [.. cases.Select(one => one with { Depth = BatchDepth.Settling })];
        BatchCase[] asked = [.. cases, .. settling, .. Enumerable.Reverse(cases)];
        int[] times = new int[asked.Length];
        BatchResult[] results = BatchStudy.Run(asked, new BatchOptions { Threads = 2, Finished = (i, r) => Interlocked.Increment(ref times[i]) });
        Assert.All(times, count => Assert.Equal(1, count));
        Assert.Equal(BatchStudy.Run(cases, new BatchOptions()), results[..12]);
        Assert.Equal(BatchStudy.Run(cases, new BatchOptions { Depth = BatchDepth.Settling }), results[12..24]);
        Assert.Equal([.. Enumerable.Reverse(results[..12])], results[24..]);
    }

    [Fact]
    public void OneLaneServesCasesThatTakeTheSameSteps()
    {
        MountSetup setup = Mixed(2.0)[3].Setup;
        BatchCase[] cases =
        [
            new(setup, MountAxis.Polar),
            new(setup with { Move = setup.Move with { SettleToleranceRadians = 1e-9 } }, MountAxis.Polar),
            new(setup.Loaded(MountAxis.Polar, 1.0 + 1e-15), MountAxis.Polar),
        ];
        var options = new BatchOptions { Depth = BatchDepth.Settling };
        LaneCase[] ready = [.. cases.Select((one, i) => new LaneCase(i, one, options))];
        Assert.Equal([ready[0], ready[2]], LaneCase.Different(ready));
        Assert.Equal(ready[..2], ready[0].Alike);
        Assert.Equal([.. cases.Select(one => Assert.Single(BatchStudy.Run([one], options)))], BatchStudy.Run(cases, options));
    }

    [Fact]
    public void AStoppedBatchThrows()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => BatchStudy.Run(Mixed(), new BatchOptions { Stop = stop.Token }));
    }

    [Fact]
    public void NoCasesGiveNoResults() => Assert.Empty(BatchStudy.Run([], new BatchOptions()));

    [Fact]
    public void WhatNoStepCanFollowIsNotWorkable()
    {
        AxisModel axis = BenchmarkCase.Axis with { Motor = BenchmarkCase.Motor with { RotorInertiaKilogramSquareMetres = 1e-18 }, Train = BenchmarkCase.Axis.Train with { Stages = [] } };
        BatchResult result = Assert.Single(BatchStudy.Run([new BatchCase(BenchmarkCase.Setup(axis, 0.0, 0.1, 0.5), MountAxis.Polar)], new BatchOptions()));
        Assert.Equal(BatchEnd.NotWorkable, result.End);
    }

    [Fact]
    public void AShortSlewOfEveryFeatureIsTheSameInALane()
    {
        MountSetup setup = EveryFeature.Slew with
        {
            Move = EveryFeature.Slew.Move with { End = new MountPose(-98 * BenchmarkCase.Degree, 11 * BenchmarkCase.Degree) },
        };
        BatchCase[] cases = [.. Enumerable.Range(0, 11).Select(i => new BatchCase(setup with { Load = setup.Load.Scaled(1.0 + (0.1 * i), 1.0 + i) }, (MountAxis)(i % 2)))];
        foreach (BatchWidth width in Widths)
        {
            Assert.Equal([.. cases.Select(Single)], BatchStudy.Run(cases, new BatchOptions { Width = width }));
        }
    }

    /// <summary>Short moves of the benchmark axis: loads, ramps, currents, probe, clutch; some share their commands, some do not.</summary>
    private static List<BatchCase> Mixed(double observe = 0.5)
    {
        List<BatchCase> cases = [];
        for (int i = 0; i < 60; i++)
        {
            AxisModel axis = BenchmarkCase.Axis with
            {
                Motor = BenchmarkCase.Motor with { CoulombTorqueNewtonMetres = 0.005 + (0.03 * (i % 7)) },
                Drive = BenchmarkCase.Drive with { SlewCurrentAmperes = 1.0 + (0.1 * (i % 5)), MicrostepsPerFullStep = i % 11 == 0 ? 10 : 64 },
                Train = BenchmarkCase.Axis.Train with { ClutchNewtonMetres = i % 9 == 0 ? 2.0 : 60.0 },
                Motion = new AxisMotion { SlewRateRadiansPerSecond = (2 + (i % 4)) * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(i < 40 ? 0.3 : 0.2 + (0.01 * i)) },
            };
            cases.Add(new BatchCase(BenchmarkCase.Setup(axis, i % 3, 2 * BenchmarkCase.Degree, observe, probe: true), MountAxis.Polar));
        }

        return cases;
    }

    /// <summary>What a run by itself says of a case.</summary>
    internal static BatchResult Single(BatchCase item)
    {
        var plan = new MovePlan(item.Setup);
        var run = new MoveRun(item.Setup, item.Axis, plan, StepChoice.DefaultSeconds);
        var none = default(NoObserver);
        bool arrives = run.RunTo(plan.SlewSeconds + LaneCase.BeyondSeconds, ref none, stopWhenLost: true);
        BatchEnd end = arrives ? BatchEnd.Arrives : run.Failure is not null ? BatchEnd.Broken : run.SlipRadians != 0.0 ? BatchEnd.ClutchSlips : BatchEnd.Stalls;
        return new BatchResult(end, arrives ? double.NaN : run.TimeSeconds, plan.SlewSeconds, double.NaN, double.NaN);
    }
}
