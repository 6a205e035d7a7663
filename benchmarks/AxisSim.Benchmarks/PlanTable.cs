using System.Globalization;
using AxisSim.Core.Batches;
using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks;

/// <summary>What a step costs in moves that share no plan, beside like moves in the same run; one thread, processor time, interleaved.</summary>
internal static class PlanTable
{
    private const int Rounds = 5;
    private const double Always = 1e9;
    private const double Above = 12.0;
    private static readonly int[] Microsteps = [64, 10, 16, 256, 20, 32, 5, 128];

    private static MountSetup Bare { get; } = LaneBenchmarks.Cases(BenchmarkCase.Axis, 15.0)[0].Setup;

    /// <summary>With sync probe, damping, a turbulent wind with a gust, and the other axis moving.</summary>
    private static MountSetup Disturbed { get; } = FeatureTable.Posed(Bare) with
    {
        Polar = Bare.Polar! with { Drive = Bare.Polar!.Drive with { GivenDampingNewtonMetreSecondsPerRadian = 1e-4 } },
        Disturbances = EveryFeature.Slew.Disturbances with { SyncProbe = true, ColdGreaseFactor = 1.0 },
    };

    public static void Print(TextWriter output)
    {
        (string Name, BatchCase[] Own, BatchCase[] Like, BatchWidth Width)[] rows =
        [
            ("ramp and rate differ, full-stepping", Own(Bare, Above, false), Like(Bare), BatchWidth.Best),
            ("ramp and rate differ, microstepping", Own(Bare, Always, false), Like(Bare), BatchWidth.Best),
            ("all differ", Own(Bare, Above, true), Like(Bare), BatchWidth.Best),
            ("ramp and rate differ, microstepping, disturbed", Own(Disturbed, Always, false), Like(Disturbed), BatchWidth.Best),
            ("all differ, disturbed", Own(Disturbed, Above, true), Like(Disturbed), BatchWidth.Best),
            ("all differ, four abreast", Own(Bare, Above, true), Like(Bare), BatchWidth.Four),
            ("all differ, two abreast", Own(Bare, Above, true), Like(Bare), BatchWidth.Two),
            ("all differ, one after the other", Own(Bare, Above, true), Like(Bare), BatchWidth.One),
        ];
        var own = rows.Select(_ => new List<double>()).ToArray();
        var like = rows.Select(_ => new List<double>()).ToArray();
        for (int round = -1; round < Rounds; round++)
        {
            for (int i = 0; i < rows.Length; i++)
            {
                (double a, double b) = (Nanoseconds(rows[i].Own, rows[i].Width), Nanoseconds(rows[i].Like, rows[i].Width));
                if (round >= 0)
                {
                    own[i].Add(a);
                    like[i].Add(b);
                }
            }
        }

        output.WriteLine("| moves | ns per step and lane | like moves | ratio |");
        output.WriteLine("|---|---|---|---|");
        for (int i = 0; i < rows.Length; i++)
        {
            (double a, double b) = (FeatureTable.Median(own[i]), FeatureTable.Median(like[i]));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {rows[i].Name} | {a:0.0} | {b:0.0} | {a / b:0.00} |"));
        }
    }

    private static BatchCase[] Like(MountSetup setup) => LaneBenchmarks.Cases(setup);

    private static BatchCase[] Own(MountSetup setup, double changeover, bool all)
    {
        const int Lanes = LaneBenchmarks.Lanes;
        return [.. Enumerable.Range(0, Lanes).Select(i => new BatchCase(setup with { Polar = Varied(setup.Polar!, i / (double)Lanes, i * 37 % Lanes / (double)Lanes, changeover * (1.0 + (0.1 * (i % 5))), all ? i : null) }, MountAxis.Polar))];
    }

    private static AxisModel Varied(AxisModel axis, double ramp, double rate, double changeover, int? lane)
    {
        AxisMotion motion = axis.Motion with { SlewRateRadiansPerSecond = (2.9 + (0.2 * rate)) * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.9 + (0.2 * ramp)) };
        ChopperDrive drive = axis.Drive with { ChangeoverRadiansPerSecond = changeover };
        if (lane is { } i)
        {
            motion = motion with
            {
                Shape = i % 3 == 0 ? RampShape.SCurve : RampShape.Trapezoid,
                StartRateRadiansPerSecond = i % 4 == 1 ? 0.2 * BenchmarkCase.Degree : 0.0,
            };
            drive = drive with { MicrostepsPerFullStep = Microsteps[i % Microsteps.Length] };
        }

        return axis with { Motion = motion, Drive = drive };
    }

    private static double Nanoseconds(BatchCase[] cases, BatchWidth width)
    {
        TimeSpan start = Environment.CpuUsage.TotalTime;
        BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Threads = 1, Width = width });
        double seconds = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
        if (results.Any(r => r.End != MoveEnd.Arrives))
        {
            throw new InvalidOperationException("a timed lane did not arrive: " + results.First(r => r.End != MoveEnd.Arrives));
        }

        double steps = 0.0;
        for (int i = 0; i < cases.Length; i++)
        {
            steps += (results[i].SlewSeconds + LaneCase.BeyondSeconds) / StepChoice.For(cases[i].Setup, cases[i].Axis, StepChoice.DefaultSeconds).StepSeconds;
        }

        return 1e9 * seconds / steps;
    }
}
