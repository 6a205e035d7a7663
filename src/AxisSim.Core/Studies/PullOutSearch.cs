using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Pull-out torque of an axis at one speed and mode, by simulation of the whole axis under steady loads.</summary>
/// <remarks>
/// Twelve loads, from that of the bearings alone to above the closed form, each come on in two ways (<see cref="SteadyPast"/>), tell for which the motor keeps sync; twelve more of each way
/// between the lightest that fails and the one below it, held for longer, place its edge to 0.4 % of the closed form. A load counts as held if sync is kept for a second (or three full steps, at
/// creeping speed). The least of the range is the lowest edge, its greatest the highest load that was held in either way.
/// </remarks>
internal static class PullOutSearch
{
    private const int Loads = 12;
    private const double RoughSeconds = 0.3;
    private const double FineSeconds = 1.0;
    private const double FullSteps = 3.0;

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

        double leastSeconds = FullSteps * fullStep / used;
        Edge[] edges = Rough(lanes, Math.Max(RoughSeconds, leastSeconds));
        while (edges.Any(edge => !edge.Done))
        {
            Refine(lanes, edges, Math.Max(FineSeconds, leastSeconds));
        }

        return new PullOutTorque(edges.Min(edge => edge.Least), edges.Max(edge => edge.Greatest));
    }

    private static Edge[] Rough(SteadyLanes lanes, double seconds)
    {
        double own = lanes.OwnNewtonMetres;
        double top = Above * Math.Max(lanes.ClosedFormNewtonMetres, own);
        for (int raise = 0; ; raise++, top *= Higher)
        {
            double rise = (top - own) / (Loads - 1);
            double[] loads = [.. Enumerable.Range(0, Loads).Select(i => own + (i * rise))];
            bool[][] kept = Keeps(lanes, [.. Pasts.Select(_ => loads)], seconds);
            if (raise == Raises || !kept.Any(way => way[^1]))
            {
                return [.. kept.Select(way => new Edge(loads, way))];
            }
        }
    }

    private static void Refine(SteadyLanes lanes, Edge[] edges, double seconds)
    {
        bool[][] held = Keeps(lanes, [.. edges.Select(edge => edge.Asks())], seconds);
        for (int i = 0; i < edges.Length; i++)
        {
            edges[i].Take(held[i]);
        }
    }

    private static bool[][] Keeps(SteadyLanes lanes, double[][] loads, double seconds)
    {
        bool[] kept = lanes.Keeps([.. loads.SelectMany((way, i) => way.Select(load => new SteadyLoadCase(load, Pasts[i])))], seconds);
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

        public void Take(bool[] held)
        {
            if (Done)
            {
                return;
            }

            double low = _loads[_fails - 1];
            int first = Array.IndexOf(held, false);
            if (first == 0)
            {
                // What fails only when held for longer pushes the edge down by a whole interval.
                _fails--;
                Done = _fails == 0;
                Greatest = Done ? _islands : 0.0;
                return;
            }

            Least = low + (((first < 0 ? Loads : first) - 0.5) * Rise);
            Greatest = Math.Max(_islands, low + ((Array.LastIndexOf(held, true) + 0.5) * Rise));
            Done = true;
        }

        private double Middle(int index) => index + 1 < _loads.Length ? 0.5 * (_loads[index] + _loads[index + 1]) : _loads[index];
    }
}
