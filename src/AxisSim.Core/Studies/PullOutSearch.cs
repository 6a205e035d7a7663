using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Pull-out torque of an axis at one speed and mode, by simulation of the whole axis under steady loads.</summary>
/// <remarks>
/// Twelve loads, from that of the bearings alone to above the closed form, each come on in two ways (<see cref="SteadyPast"/>), tell for which the motor keeps sync; twelve more of each way
/// between the lightest that fails and the one below it, held for longer, place its edge to 0.4 % of the closed form. Below the least of the range every load was held for a second (or twelve
/// full steps, at creeping speed); above the greatest none was held for 0.3 s (or four full steps) in either way. Where a full-stepping rotor swings between its steps, the greatest is the
/// closed form: a rotor that each step throws over the next can hold up to the running mean of its field, but not every start finds that way to run.
/// </remarks>
internal static class PullOutSearch
{
    private const int Loads = 12;
    private const double RoughSeconds = 0.3;
    private const double FineSeconds = 1.0;
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
        Edge[] edges = Rough(lanes, rough);
        while (edges.Any(edge => !edge.Done))
        {
            Refine(lanes, edges, rough, Math.Max(FineSeconds, FineFullSteps * fullStep / used));
        }

        double greatest = edges.Max(edge => edge.Greatest);
        return new PullOutTorque(edges.Min(edge => edge.Least), lanes.SwingsBetweenSteps ? Math.Max(greatest, lanes.ClosedFormNewtonMetres) : greatest);
    }

    private static Edge[] Rough(SteadyLanes lanes, double seconds)
    {
        double own = lanes.OwnNewtonMetres;
        double top = Above * Math.Max(lanes.ClosedFormNewtonMetres, own);
        for (int raise = 0; ; raise++, top *= Higher)
        {
            double rise = (top - own) / (Loads - 1);
            double[] loads = [.. Enumerable.Range(0, Loads).Select(i => own + (i * rise))];
            bool[][] kept = [.. Kept(lanes, [.. Pasts.Select(_ => loads)], seconds).Select(way => way.Select(double.IsPositiveInfinity).ToArray())];
            if (raise == Raises || !kept.Any(way => way[^1]))
            {
                return [.. kept.Select(way => new Edge(loads, way))];
            }
        }
    }

    private static void Refine(SteadyLanes lanes, Edge[] edges, double briefly, double seconds)
    {
        double[][] kept = Kept(lanes, [.. edges.Select(edge => edge.Asks())], seconds);
        for (int i = 0; i < edges.Length; i++)
        {
            edges[i].Take(kept[i], briefly);
        }
    }

    private static double[][] Kept(SteadyLanes lanes, double[][] loads, double seconds)
    {
        double[] kept = lanes.Kept([.. loads.SelectMany((way, i) => way.Select(load => new SteadyLoadCase(load, Pasts[i])))], seconds);
        int from = 0;
        return [.. loads.Select(way => kept[from..(from += way.Length)])];
    }

    /// <summary>The edge of one way in which loads come on.</summary>
    private sealed class Edge
    {
        private readonly double[] _loads;
        private readonly double _islands;
        private int _fails;

        public Edge(double[] loads, bool[] kept)
        {
            _loads = loads;
            _fails = Array.IndexOf(kept, false);
            int highest = Array.LastIndexOf(kept, true);
            _islands = highest > _fails && _fails >= 0 ? Middle(highest) : 0.0;
            if (_fails < 0)
            {
                (Least, Greatest, Done) = (loads[^1], loads[^1], true);
            }
            else if (_fails == 0)
            {
                (Least, Greatest, Done) = (0.0, _islands, true);
            }
        }

        public double Least { get; private set; }

        public double Greatest { get; private set; }

        public bool Done { get; private set; }

        private double Rise => (_loads[_fails] - _loads[_fails - 1]) / Loads;

        /// <summary>Loads between the lightest that fails and the one below.</summary>
        public double[] Asks() => Done ? [] : [.. Enumerable.Range(0, Loads).Select(i => _loads[_fails - 1] + (i * Rise))];

        public void Take(double[] keptSeconds, double briefly)
        {
            if (Done)
            {
                return;
            }

            double low = _loads[_fails - 1];
            int first = Array.FindIndex(keptSeconds, time => !double.IsPositiveInfinity(time));
            if (first == 0)
            {
                // What fails only when held for longer pushes the edge down by a whole interval.
                _fails--;
                Done = _fails == 0;
                Greatest = Done ? _islands : 0.0;
                return;
            }

            Least = low + (((first < 0 ? Loads : first) - 0.5) * Rise);
            Greatest = Math.Max(_islands, low + ((Array.FindLastIndex(keptSeconds, time => time > briefly) + 0.5) * Rise));
            Done = true;
        }

        private double Middle(int index) => index + 1 < _loads.Length ? 0.5 * (_loads[index] + _loads[index + 1]) : _loads[index];
    }
}
