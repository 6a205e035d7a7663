using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks.Peers;

/// <summary>The benchmark slew, one axis at a time: its speed, and its states to hold another program's against.</summary>
internal static class PeerSlews
{
    private const double EndSeconds = 35.0;
    private static readonly (string Name, double Imbalance)[] s_cases = [("helping", 4.0), ("opposing", -4.0)];
    private static readonly double[] s_times = [0.5, 2, 8, 16, 28, 31, 32, EndSeconds];

    /// <summary>ns per step of each case over the whole move with its hold, after a run to warm up.</summary>
    public static void Time(TextWriter output)
    {
        foreach ((string name, double imbalance) in s_cases)
        {
            To(Create(imbalance), EndSeconds);
            MoveRun run = Create(imbalance);
            TimeSpan start = Environment.CpuUsage.TotalTime;
            To(run, EndSeconds);
            double seconds = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
            double steps = Math.Round(run.TimeSeconds / run.Choice.StepSeconds);
            PeerRuns.Line(output, ("what", $"scalar {name}"), ("unit", "ns/step"), ("value", 1e9 * seconds / steps), ("check", run.State.Axis));
        }
    }

    public static void States(TextWriter output)
    {
        foreach ((string name, double imbalance) in s_cases)
        {
            MoveRun run = Create(imbalance);
            foreach (double time in s_times)
            {
                To(run, time);
                AxisState s = run.State;
                (double a, double b) = run.Currents;
                PeerRuns.Line(
                    output,
                    ("state", name), ("seconds", run.TimeSeconds), ("rotor", s.Rotor), ("rotor_speed", s.RotorSpeed), ("axis", s.Axis), ("axis_speed", s.AxisSpeed), ("ia", a), ("ib", b));
            }
        }
    }

    private static MoveRun Create(double imbalance)
    {
        Core.Mount.MountSetup setup = BenchmarkCase.Slew(imbalance);
        return new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
    }

    private static void To(MoveRun run, double seconds)
    {
        var none = default(NoObserver);
        if (!run.RunTo(seconds, ref none, stopWhenLost: true))
        {
            throw new InvalidOperationException($"the timed run lost sync or its clutch's grip by {run.TimeSeconds} s");
        }
    }
}
