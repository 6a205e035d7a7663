using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;
using BenchmarkDotNet.Attributes;

namespace AxisSim.Benchmarks;

/// <summary>Time and memory of a step of one lane, in a batch of like moves on one thread, by the width of the registers in use.</summary>
[MemoryDiagnoser]
public class LaneBenchmarks
{
    internal const int Lanes = 96;
    private const int LaneSteps = Lanes * 126_000;

    private BatchCase[] _cases = null!;

    /// <summary>Registers in use.</summary>
    [Params(BatchWidth.One, BatchWidth.Two, BatchWidth.Four, BatchWidth.Eight)]
    public BatchWidth Width { get; set; }

    /// <summary>Slews of 6 s with both modes.</summary>
    [GlobalSetup]
    public void SetUp() => _cases = Cases(BenchmarkCase.Axis, 15.0);

    /// <summary>The benchmark case with its features off, lanes differing in load.</summary>
    [Benchmark(OperationsPerInvoke = LaneSteps)]
    public BatchResult[] Outcomes() => BatchStudy.Run(_cases, new BatchOptions { Threads = 1, Width = Width });

    internal static BatchCase[] Cases(AxisModel axis, double degrees) => Cases(BenchmarkCase.Setup(Gentle(axis), 4.0, degrees * BenchmarkCase.Degree, 1.0));

    internal static BatchCase[] Cases(MountSetup setup) =>
        [.. Enumerable.Range(0, Lanes).Select(i => new BatchCase(setup with { Load = setup.Load.Scaled(1.0, 1.0 - (0.005 * i)) }, MountAxis.Polar))];

    private static AxisModel Gentle(AxisModel axis) => axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(1.0) } };
}
