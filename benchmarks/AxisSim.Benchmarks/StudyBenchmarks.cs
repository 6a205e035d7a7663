using AxisSim.Benchmarks.Cases;
using AxisSim.Core.Motion;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;
using BenchmarkDotNet.Attributes;

namespace AxisSim.Benchmarks;

/// <summary>What a user waits for: the curves and whole simulations, on all cores.</summary>
[MemoryDiagnoser]
public class StudyBenchmarks
{
    private static readonly MoveOptions s_plain = new() { Explain = false };
    private static readonly MoveOptions s_explained = new();

    /// <summary>Pull-out at 32 speeds in the modes that the move uses, nominal supply.</summary>
    [Benchmark]
    public TorqueSpeedCurves PullOutOfTheMove()
    {
        Core.Mount.MountSetup setup = BenchmarkCase.Slew(-4.0);
        return CurveStudy.ForMove(setup, MountAxis.Polar, new MovePlan(setup));
    }

    /// <summary>Pull-out at 32 speeds, both modes, three supplies.</summary>
    [Benchmark]
    public TorqueSpeedCurves AllPullOutCurves() => CurveStudy.Run(BenchmarkCase.Slew(-4.0), MountAxis.Polar);

    /// <summary>A move of 35 s with its trace, pull-out curves and verdict.</summary>
    [Benchmark(Baseline = true)]
    public AxisResult Move() => MoveStudy.Run(BenchmarkCase.Slew(-4.0, probe: true), MountAxis.Polar, s_plain);

    /// <summary>The same with the search for the load factor.</summary>
    [Benchmark]
    public AxisResult MoveWithLoadFactor() => MoveStudy.Run(BenchmarkCase.Slew(-4.0, probe: true), MountAxis.Polar, s_explained);

    /// <summary>A move with every feature, without the search.</summary>
    [Benchmark]
    public AxisResult MoveWithEveryFeature() => MoveStudy.Run(EveryFeature.Slew, MountAxis.Polar, s_plain);
}
