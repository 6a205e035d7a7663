using AxisSim.Benchmarks;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

if (args is ["quick"])
{
    QuickTable.Print(Console.Out);
    return;
}

// In this process: a generated project would be built with this repository's strict settings, which are not meant for it.
IConfig config = DefaultConfig.Instance.AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance));
BenchmarkSwitcher.FromAssembly(typeof(StepBenchmarks).Assembly).Run(args, config);
