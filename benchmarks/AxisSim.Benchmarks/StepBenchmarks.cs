using AxisSim.Benchmarks.Cases;
using AxisSim.Tests.Assemblies;
using BenchmarkDotNet.Attributes;

namespace AxisSim.Benchmarks;

/// <summary>Time and memory of one step of one axis, over 24 s of slew at the default step (so with both ramps' modes, micro- and full-stepping).</summary>
[MemoryDiagnoser]
public class StepBenchmarks
{
    /// <summary>Steps in one timed call.</summary>
    internal const int Steps = 480_000;

    private SteppedRun _run = null!;

    [IterationSetup(Target = nameof(Nominal))]
    public void SetUpNominal() => _run = new SteppedRun(BenchmarkCase.Slew(4.0));

    /// <summary>The benchmark case with its features off.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Steps)]
    public double Nominal() => _run.Take(Steps);

    [IterationSetup(Target = nameof(Opposing))]
    public void SetUpOpposing() => _run = new SteppedRun(BenchmarkCase.Slew(-4.0));

    /// <summary>The same with the imbalance against the motion.</summary>
    [Benchmark(OperationsPerInvoke = Steps)]
    public double Opposing() => _run.Take(Steps);

    [IterationSetup(Target = nameof(EveryFeatureOn))]
    public void SetUpEveryFeature() => _run = new SteppedRun(EveryFeature.Slew);

    /// <summary>With every feature of the model.</summary>
    [Benchmark(OperationsPerInvoke = Steps)]
    public double EveryFeatureOn() => _run.Take(Steps);
}
