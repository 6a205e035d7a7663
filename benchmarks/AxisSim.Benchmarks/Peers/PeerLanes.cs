using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks.Peers;

/// <summary>The benchmark slew for many axes that differ a little in load, friction, torque and current, as one batch on one thread.</summary>
internal static class PeerLanes
{
    /// <summary>Time watched beyond the slew by a batch that asks for the outcome alone, s.</summary>
    private const double BeyondSeconds = 0.3;

    private const int WarmUps = 4;

    public static void Time(TextWriter output, int lanes)
    {
        BatchCase[] cases = [.. Enumerable.Range(0, lanes).Select(lane => new BatchCase(Setup(lane), MountAxis.Polar))];
        var options = new BatchOptions { Threads = 1, StepSeconds = StepChoice.DefaultSeconds };

        // The peers are compiled before they run; here the runtime's own compiler is given the time of some batches.
        for (int i = 0; i < WarmUps; i++)
        {
            BatchStudy.Run(cases, options);
        }

        TimeSpan start = Environment.CpuUsage.TotalTime;
        BatchResult[] results = BatchStudy.Run(cases, options);
        double seconds = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
        double steps = (results[0].SlewSeconds + BeyondSeconds) / options.StepSeconds;
        int lost = results.Count(r => r.End != MoveEnd.Arrives);
        PeerRuns.Line(output, ("what", "lanes"), ("unit", "ns/step/lane"), ("value", 1e9 * seconds / steps / lanes), ("lanes", lanes), ("lost", lost));
    }

    // As lane_axis in benchmarks/peers/team.c.
    private static MountSetup Setup(int lane)
    {
        if (lane < 2)
        {
            return BenchmarkCase.Slew(lane == 1 ? -4.0 : 4.0);
        }

        double u = lane % 16 / 16.0;
        double x = lane % 7 / 7.0;
        MountSetup setup = BenchmarkCase.Slew(-4.0 + (8.0 * u));
        AxisModel axis = BenchmarkCase.Axis;
        double current = axis.Drive.SlewCurrentAmperes * (1.02 - (0.04 * x));
        return setup with
        {
            Load = setup.Load.Scaled((5.5 + x) / 6.0, 1.0),
            Polar = axis with
            {
                Motor = axis.Motor with
                {
                    CoulombTorqueNewtonMetres = 0.004 + (0.003 * x),
                    HoldingTorqueNewtonMetres = axis.Motor.HoldingTorqueNewtonMetres * (0.97 + (0.06 * u)),
                },
                Drive = axis.Drive with { SlewCurrentAmperes = current, TrackingCurrentAmperes = current, HoldingCurrentAmperes = current },
                Bearings = axis.Bearings with { CoulombNewtonMetres = 0.7 + (0.2 * u) },
            },
        };
    }
}
