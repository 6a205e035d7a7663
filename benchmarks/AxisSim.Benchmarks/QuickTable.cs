using System.Diagnostics;
using System.Globalization;
using AxisSim.Benchmarks.Cases;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks;

/// <summary>The same suites in a few seconds: every case in turn, several times over, so that a slow spell of the machine meets all; medians.</summary>
internal static class QuickTable
{
    private const int StepRounds = 9;
    private const int StudyRounds = 5;

    private sealed record Sample(string Name, string Unit, Func<(double Value, long Bytes)> Take);

    public static void Print(TextWriter output)
    {
        Measure(output, StepRounds,
        [
            Stepped("step, nominal", () => BenchmarkCase.Slew(4.0), (run, steps) => run.Take(steps)),
            Stepped("step, opposing imbalance", () => BenchmarkCase.Slew(-4.0), (run, steps) => run.Take(steps)),
            Stepped("step, nominal, recorded", () => BenchmarkCase.Slew(4.0), (run, steps) => run.TakeRecorded(steps)),
            Stepped("step, every feature", () => EveryFeature.Slew, (run, steps) => run.Take(steps)),
        ]);
        var benchmarks = new StudyBenchmarks();
        Measure(output, StudyRounds,
        [
            Timed("pull-out curves of a move", benchmarks.PullOutOfTheMove),
            Timed("all pull-out curves", benchmarks.AllPullOutCurves),
            Timed("move of 35 s", benchmarks.Move),
            Timed("move with load factor", benchmarks.MoveWithLoadFactor),
            Timed("move with every feature", benchmarks.MoveWithEveryFeature),
        ]);
    }

    private static Sample Stepped(string name, Func<MountSetup> setup, Func<SteppedRun, int, double> take) => new(name, "ns/step", () =>
    {
        const int Steps = StepBenchmarks.Steps / 4;
        var run = new SteppedRun(setup());

        // The ramp, with its change to full-stepping, is not part of the quick figure.
        take(run, (int)(Math.Round(3.0 / run.StepSeconds / Core.Stepping.MoveRun.BlockSteps) * Core.Stepping.MoveRun.BlockSteps));
        long before = GC.GetAllocatedBytesForCurrentThread();
        long start = Stopwatch.GetTimestamp();
        take(run, Steps);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return (1e9 * seconds / Steps, GC.GetAllocatedBytesForCurrentThread() - before);
    });

    private static Sample Timed<T>(string name, Func<T> run) => new(name, "ms", () =>
    {
        long before = GC.GetTotalAllocatedBytes();
        long start = Stopwatch.GetTimestamp();
        GC.KeepAlive(run());
        return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, GC.GetTotalAllocatedBytes() - before);
    });

    private static void Measure(TextWriter output, int rounds, Sample[] samples)
    {
        var values = samples.Select(_ => new List<double>()).ToArray();
        long[] bytes = new long[samples.Length];
        for (int round = -1; round < rounds; round++)
        {
            for (int i = 0; i < samples.Length; i++)
            {
                (double value, bytes[i]) = samples[i].Take();
                if (round >= 0)
                {
                    values[i].Add(value);
                }
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"case",-28}{"median",10}{"least",10}{"most",10}  {"unit",-8}{"bytes",14}"));
        for (int i = 0; i < samples.Length; i++)
        {
            values[i].Sort();
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{samples[i].Name,-28}{values[i][values[i].Count / 2],10:0.0}{values[i][0],10:0.0}{values[i][^1],10:0.0}  {samples[i].Unit,-8}{bytes[i],14:#,0}"));
        }
    }
}
