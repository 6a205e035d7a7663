using System.Globalization;
using AxisSim.Core.Batches;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks;

/// <summary>What each feature costs a lane: the bare benchmark case, each feature alone, and all of them; interleaved, in processor time.</summary>
internal static class FeatureTable
{
    private const int Rounds = 7;

    private static MountSetup Bare { get; } = LaneBenchmarks.Cases(BenchmarkCase.Axis, 15.0)[0].Setup;

    public static void Print(TextWriter output)
    {
        (string Name, MountSetup Setup)[] rows =
        [
            ("bare", Bare),
            ("flexible payload", Axis(a => a with { Flexible = new FlexiblePayload { FrequencyHertz = 8.0 } })),
            ("wind with turbulence and a gust", Bare with { Disturbances = EveryFeature.Slew.Disturbances with { SyncProbe = false, ColdGreaseFactor = 1.0 } }),
            ("sagging supply", Axis(a => a with { Drive = a.Drive with { SupplyResistanceOhms = 0.3, BrakeLimitVolts = 30.0 } })),
            ("warming winding", Axis(a => a with { Motor = a.Motor with { GivenThermalResistanceKelvinPerWatt = null } })),
            ("bodies in three dimensions, second axis moving", Posed(Bare)),
            ("sync probe and plan damping", Bare with { Polar = Bare.Polar! with { Drive = Bare.Polar!.Drive with { GivenDampingNewtonMetreSecondsPerRadian = 1e-4 } }, Disturbances = new Disturbances { SyncProbe = true } }),
            ("elastic stage before the worm", Axis(a => a with { Train = EveryFeature.Slew.Polar!.Train with { Worm = a.Train.Worm with { InertiaKilogramSquareMetres = 5e-6 } } })),
            ("the first five together", All(false)),
            ("every feature", All(true)),
        ];
        var times = rows.ToDictionary(row => row.Name, _ => new List<double>());
        for (int round = -1; round < Rounds; round++)
        {
            foreach ((string name, MountSetup setup) in rows)
            {
                double nanoseconds = NanosecondsPerStep(setup);
                if (round >= 0)
                {
                    times[name].Add(nanoseconds);
                }
            }
        }

        double bare = Median(times["bare"]);
        output.WriteLine("| feature | ns per step and lane | over bare |");
        output.WriteLine("|---|---|---|");
        foreach ((string name, MountSetup _) in rows)
        {
            double median = Median(times[name]);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {median:0.00} | {median / bare:0.00} |"));
        }
    }

    private static double NanosecondsPerStep(MountSetup setup)
    {
        BatchCase[] cases = LaneBenchmarks.Cases(setup);
        TimeSpan start = Environment.CpuUsage.TotalTime;
        BatchResult[] results = BatchStudy.Run(cases, new BatchOptions { Threads = 1 });
        double seconds = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
        if (results.Any(r => r.End != MoveEnd.Arrives))
        {
            throw new InvalidOperationException("a timed lane did not arrive: " + results.First(r => r.End != MoveEnd.Arrives));
        }

        StepChoice step = Core.Studies.MoveStudy.Step(setup, MountAxis.Polar, StepChoice.DefaultSeconds);
        return 1e9 * seconds * step.StepSeconds / ((results[0].SlewSeconds + Core.Batches.LaneCase.BeyondSeconds) * cases.Length);
    }

    private static MountSetup Axis(Func<AxisModel, AxisModel> change) => Bare with { Polar = change(Bare.Polar!) };

    internal static MountSetup Posed(MountSetup setup) => setup with
    {
        Declination = setup.Polar,
        Load = EveryFeature.Slew.Load,
        Move = setup.Move with { Start = new MountPose(-30 * BenchmarkCase.Degree, 10 * BenchmarkCase.Degree), End = new MountPose(-15 * BenchmarkCase.Degree, 25 * BenchmarkCase.Degree) },
    };

    private static MountSetup All(bool stage)
    {
        AxisModel every = EveryFeature.Slew.Polar!;
        MountSetup posed = Posed(Bare);
        AxisModel axis = (stage ? every : Bare.Polar!) with
        {
            Motor = every.Motor,
            Drive = every.Drive with { TrackingCurrentAmperes = 1.5, HoldingCurrentAmperes = 1.5 },
            Flexible = every.Flexible,
            Motion = Bare.Polar!.Motion,
        };
        return posed with { Polar = axis, Declination = axis, Disturbances = EveryFeature.Slew.Disturbances };
    }

    internal static double Median(List<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }
}
