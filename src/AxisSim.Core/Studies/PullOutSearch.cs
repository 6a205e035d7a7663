using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Pull-out torque of an axis at one speed and mode, by simulation of the whole axis under steady loads.</summary>
/// <remarks>
/// Twelve loads, from that of the bearings alone to above the closed form, each come on in two ways (<see cref="SteadyPast"/>), tell for which the motor keeps sync. They are spaced evenly in the load
/// angle, for it is near the peak that the field softens and a detent meets the axis' swing. Then <see cref="PullOutEdge"/> places the edge of each way with loads that are held for longer. Below the
/// least of the range every load tried was held for a second (twelve full steps at creeping speed, or as long as a swing of the axis takes to build up where the detent drives it); above the greatest none was held for
/// 0.3 s (four full steps, five swings of the axis) in either way. Where a full-stepping rotor swings between its steps, the greatest is the
/// closed form: a rotor that each step throws over the next can hold up to the running mean of its field, but not every start finds that way to run.
/// </remarks>
internal static class PullOutSearch
{
    private const int Loads = 12;

    /// <summary>How finely the edge is placed, as a share of the closed form.</summary>
    private const double Grain = 0.005;

    private const double RoughSeconds = 0.3;
    private const double FineSeconds = 1.0;

    /// <summary>What is held briefly is watched a little longer than that.</summary>
    private const double Watched = 1.2;

    private const double RoughFullSteps = 4.0;
    private const double FineFullSteps = 12.0;

    /// <summary>Slower than this, each full step is by itself, and the speed does not matter: the modes of an axis come to rest between them.</summary>
    private const double LeastFullStepsPerSecond = 4.0;

    /// <summary>The loads reach above the closed form, which leaves out what detent and swing may add.</summary>
    private const double Above = 1.06;

    private const double Higher = 1.4;
    private const int Raises = 4;
    private static readonly SteadyPast[] Pasts = [SteadyPast.Calm, SteadyPast.Swinging];

    /// <summary>Searches it.</summary>
    public static PullOutTorque At(MountSetup setup, MountAxis axis, bool fullStepping, double speed)
    {
        double fullStep = setup.Axis(axis).Motor.FullStepRadians;
        double used = Math.Max(speed, LeastFullStepsPerSecond * fullStep);
        var lanes = new SteadyLanes(setup, axis, fullStepping, used);
        if (!lanes.Workable)
        {
            return default;
        }

        double rough = Math.Max(RoughSeconds, RoughFullSteps * fullStep / used);
        double brief = Math.Max(rough, lanes.FallSeconds);
        double fine = Math.Max(Math.Max(FineSeconds, FineFullSteps * fullStep / used), Math.Max(lanes.BuildUpSeconds, Watched * brief));
        PullOutEdge[] edges = Rough(lanes, rough);
        while (edges.Any(edge => !edge.Done))
        {
            Refine(lanes, edges, brief, fine);
        }

        double greatest = edges.Max(edge => edge.Greatest);
        return new PullOutTorque(edges.Min(edge => edge.Least), lanes.SwingsBetweenSteps ? Math.Max(greatest, lanes.ClosedFormNewtonMetres) : greatest);
    }

    private static PullOutEdge[] Rough(SteadyLanes lanes, double seconds)
    {
        double own = lanes.OwnNewtonMetres;
        double closed = lanes.ClosedFormNewtonMetres;
        double top = Above * Math.Max(closed, own);
        for (int raise = 0; ; raise++, top *= Higher)
        {
            double[] loads = raise == 0 && closed > own ? [.. UpTo(own, closed), top] : [.. Enumerable.Range(0, Loads).Select(i => own + ((top - own) * i / (Loads - 1)))];
            double[][] kept = Kept(lanes, [.. Pasts.Select(_ => loads)], seconds);
            if (raise == Raises || !kept.Any(way => double.IsPositiveInfinity(way[^1])))
            {
                return [.. kept.Select(way => new PullOutEdge(loads, way, Grain * Math.Max(closed, own)))];
            }
        }
    }

    /// <summary>Loads evenly spaced in the load angle.</summary>
    private static IEnumerable<double> UpTo(double own, double closed) =>
        Enumerable.Range(0, Loads - 1).Select(i => own + ((closed - own) * Math.Sin(0.5 * Math.PI * i / (Loads - 2))));

    private static void Refine(SteadyLanes lanes, PullOutEdge[] edges, double briefSeconds, double seconds)
    {
        double[][] loads = [.. edges.Select(edge => edge.Asks())];
        double[][] kept = Kept(lanes, loads, seconds);
        for (int i = 0; i < edges.Length; i++)
        {
            edges[i].Take(loads[i], kept[i], briefSeconds);
        }
    }

    private static double[][] Kept(SteadyLanes lanes, double[][] loads, double seconds)
    {
        double[] kept = lanes.Kept([.. loads.SelectMany((way, i) => way.Select(load => new SteadyLoadCase(load, Pasts[i])))], seconds);
        int from = 0;
        return [.. loads.Select(way => kept[from..(from += way.Length)])];
    }
}
