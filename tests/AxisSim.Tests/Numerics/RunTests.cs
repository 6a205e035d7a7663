using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Numerics;

public sealed class RunTests
{
    [Fact]
    public void TheSameRunTwiceIsTheSameToTheLastBit()
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 0.05, Ramp = Ramp.OfSeconds(0.3) } }, -4.0, 0.1, 1.0, probe: true);
        AxisResult one = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions());
        AxisResult two = MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions());
        Assert.Equal(one.Outcome, two.Outcome);
        Assert.Equal(one.Trace.ToSeconds, two.Trace.ToSeconds);
        foreach (TraceQuantity quantity in Enum.GetValues<TraceQuantity>())
        {
            Assert.Equal(one.Trace[quantity].Least, two.Trace[quantity].Least);
            Assert.Equal(one.Trace[quantity].Greatest, two.Trace[quantity].Greatest);
        }
    }

    [Fact]
    public void AStepAllocatesNothing()
    {
        (MoveRun run, _) = Nominal();
        var none = default(NoObserver);
        AssertAllocatesNothing(run, ref none);
    }

    [Fact]
    public void ARecordedStepAllocatesNothing()
    {
        (MoveRun run, double ratio) = Nominal();
        var recorder = new MoveRecorder(new MoveRecord(run, ratio, 0.2, new TraceRecorder(run, ratio, _ => (0.0, 0.0), _ => (0.0, 0.0), double.PositiveInfinity, sink: null)));
        AssertAllocatesNothing(run, ref recorder);
    }

    private static (MoveRun Run, double Ratio) Nominal()
    {
        MountSetup setup = BenchmarkCase.Slew(-4.0, probe: true);
        return (new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds), setup.Axis(MountAxis.Polar).Train.TotalRatio);
    }

    private static void AssertAllocatesNothing<TObserver>(MoveRun run, ref TObserver observer)
        where TObserver : struct, IStepObserver
    {
        run.RunTo(2.5, ref observer, stopWhenLost: true); // compile, and pass the changeover

        // The runtime may compile a method again in the middle of a stretch and charge this thread for it, once: a step that allocates shows in every stretch.
        long least = long.MaxValue;
        for (double until = 3.0; until <= 8.0; until += 0.5)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            run.RunTo(until, ref observer, stopWhenLost: true);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
    }

    [Fact]
    public void ANumberThatIsNotFiniteStopsTheRunAndIsNamed()
    {
        // A gust of infinite speed from 1 s on; nobody outside could ask for that.
        MountSetup setup = BenchmarkCase.Slew(4.0) with
        {
            Disturbances = new Disturbances { GustMetresPerSecond = double.PositiveInfinity, GustStartSeconds = 1.0, AreaSquareMetres = 1, LeverMetres = 1 },
        };
        AxisResult result = MoveStudy.RunUnchecked(setup, MountAxis.Polar, new MoveOptions());
        Assert.NotNull(result.Broken);
        Assert.Equal(MoveEnd.Broken, result.Outcome.Verdict);
        Assert.Equal("axis speed", result.Broken.Quantity);
        Assert.InRange(result.Broken.TimeSeconds, 1.0, 1.002);
        Assert.InRange(result.Broken.LastGoodAxisRadians, 0.01, 0.014); // a t^2/2 = 0.0131 rad
        Assert.NotEmpty(result.Trace.ToSeconds); // what there is, is kept
        Assert.True(result.Trace.ToSeconds[^1] <= 1.002);
    }

    [Fact]
    public void AStepTooLongForTheSpeedIsShortenedAndSaidSo()
    {
        // 100 teeth x 37.7 rad/s x 100 us = 0.377 is just allowed; twice the slew rate is not.
        AxisModel fast = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 8 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(2) } };
        MountSetup setup = BenchmarkCase.Setup(fast, 4.0, 1.0, 0.5);
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), 50e-6);
        Assert.Equal(25e-6, run.Choice.StepSeconds);
        Assert.Contains("electrical rad in 50 us", run.Choice.Reason, StringComparison.Ordinal);
        var plain = new MoveRun(BenchmarkCase.Slew(4.0), MountAxis.Polar, new MovePlan(BenchmarkCase.Slew(4.0)), 50e-6);
        Assert.Equal(50e-6, plain.Choice.StepSeconds);
        Assert.Null(plain.Choice.Reason);
    }

    /// <summary>Damping shortens the step too: 0.05 N m s/rad on 6e-6 kg m2 decays with 8300 1/s, 0.42 in 50 us; and what no step can follow is refused by the reader.</summary>
    [Fact]
    public void DampingShortensTheStepAndTheImpossibleIsRefused()
    {
        AxisModel damped = BenchmarkCase.Axis with { Motor = BenchmarkCase.Motor with { ViscousNewtonMetreSecondsPerRadian = 0.05 } };
        MountSetup setup = BenchmarkCase.Setup(damped, 4.0, 0.1, 0.5);
        Assert.Equal(40e-6, MoveStudy.Step(setup, MountAxis.Polar, 50e-6).StepSeconds);
        string nominal = File.ReadAllText(Repository.PathOf("scenarios", "nominal.toml"));
        AxisSim.Files.Scenarios.ScenarioResult result = AxisSim.Files.Scenarios.ScenarioReader.ReadText(nominal, "n.toml", ["polar.motor.rotor_inertia=1e-15 kg*m^2"]);
        Assert.Null(result.Scenario);
        Assert.Contains("too fast for the shortest step", Assert.Single(result.Problems).ToString(), StringComparison.Ordinal);
    }
}
