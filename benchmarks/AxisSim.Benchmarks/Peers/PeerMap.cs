using System.Diagnostics;
using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks.Peers;

/// <summary>The map of the goals: slew rate (columns) against opposing shaft torque (rows), where the move arrives and where it stalls.</summary>
internal static class PeerMap
{
    private const int Columns = 100;
    private const int Rows = 100;

    /// <summary>Slew of 31.5 s at the full rate with ramps of half a second, then the hold.</summary>
    private const double DistanceSeconds = 31.5;
    private const double RampSeconds = 0.5;
    private const double ObserveSeconds = 3.0;
    private const double MotorViscous = 3e-4;

    public static void Time(TextWriter output, int threads, double stepSeconds, string? gridFile)
    {
        BatchCase[] cases = [.. Enumerable.Range(0, Columns * Rows).Select(i => new BatchCase(Setup(i % Columns, i / Columns), MountAxis.Polar))];
        var options = new BatchOptions { Threads = threads, StepSeconds = stepSeconds, StepAsAsked = true };

        // A corner of the map warms up.
        BatchStudy.Run([.. cases.Take(16)], options);
        long start = Stopwatch.GetTimestamp();
        BatchResult[] results = BatchStudy.Run(cases, options);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        int Count(MoveEnd end) => results.Count(r => r.End == end);
        PeerRuns.Line(
            output,
            ("what", "map"), ("unit", "s"), ("value", seconds), ("threads", threads), ("step_us", stepSeconds * 1e6),
            ("arrives", Count(MoveEnd.Arrives)), ("stalls", Count(MoveEnd.Stalls)), ("slips", Count(MoveEnd.ClutchSlips)));
        if (gridFile is not null)
        {
            File.WriteAllLines(gridFile, Enumerable.Range(0, Rows).Select(row => string.Concat(results.AsSpan(row * Columns, Columns).ToArray().Select(Letter))));
        }
    }

    private static char Letter(BatchResult result) => result.End switch
    {
        MoveEnd.Arrives => '.',
        MoveEnd.Stalls => '#',
        MoveEnd.ClutchSlips => 'c',
        _ => '?',
    };

    private static MountSetup Setup(int column, int row)
    {
        double rate = (1.0 + (11.0 * column / (Columns - 1))) * BenchmarkCase.Degree;
        AxisModel axis = BenchmarkCase.Axis with
        {
            Motor = BenchmarkCase.Motor with { CoulombTorqueNewtonMetres = 0.35 * row / (Rows - 1), ViscousNewtonMetreSecondsPerRadian = MotorViscous },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = rate, Ramp = Ramp.OfSeconds(RampSeconds) },
        };
        return BenchmarkCase.Setup(axis, 0.0, rate * DistanceSeconds, ObserveSeconds, probe: true);
    }
}
