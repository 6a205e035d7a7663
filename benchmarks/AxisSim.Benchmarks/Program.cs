using AxisSim.Benchmarks;
using AxisSim.Benchmarks.Peers;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

if (args is ["quick"])
{
    QuickTable.Print(Console.Out);
    return 0;
}

if (args is ["features"])
{
    FeatureTable.Print(Console.Out);
    return 0;
}

if (args is ["plans"])
{
    PlanTable.Print(Console.Out);
    return 0;
}

if (args is ["growth", string picture])
{
    GrowthPicture.Draw(picture, Console.Out);
    return 0;
}

if (args is ["peers", ..])
{
    return PeerRuns.Run(args[1..], Console.Out);
}

// In this process: a generated project would be built with this repository's strict settings, which are not meant for it.
IConfig config = DefaultConfig.Instance.AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(typeof(StepBenchmarks).Assembly).Run(args, config);
return 0;
