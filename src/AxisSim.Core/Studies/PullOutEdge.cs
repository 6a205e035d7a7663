namespace AxisSim.Core.Studies;

/// <summary>The load at which an axis loses sync at a speed, for one way in which loads come on: asks for the loads that place it, until it lies between two that do.</summary>
/// <remarks>
/// The edge is the lightest load that is lost, since a load that comes on slowly passes all below it. Loads are first held for a short time. The edge is then refined between the
/// lightest that is lost and the one below, with loads held for longer; some lighter ones are held as long, the lightest among them, for a swing that builds up slowly may be met at them alone; and so are
/// heavier ones that the short time let pass. What is lost only then moves the edge, and the search goes on there.
/// </remarks>
internal sealed class PullOutEdge
{
    /// <summary>Most loads between two.</summary>
    private const int Parts = 24;

    /// <summary>Intervals below the edge of which the middle is held for longer.</summary>
    private const int Lighter = 4;

    private const double Rounding = 1e-6;

    private readonly SortedList<double, Held> _held = [];
    private readonly double[] _rough;
    private readonly double _grain;

    /// <summary>From the loads tried at first.</summary>
    /// <param name="loads">Loads, lightest first, N m.</param>
    /// <param name="keptSeconds">For how long each kept sync, s; infinite where it was not lost.</param>
    /// <param name="grain">How finely the edge is placed, N m.</param>
    public PullOutEdge(double[] loads, double[] keptSeconds, double grain)
    {
        (_rough, _grain) = (loads, grain);
        Take(loads, keptSeconds, lengthy: false);
        int fails = Fails;
        if (fails <= 0)
        {
            // Nothing holds for sure, or everything that was tried does.
            int kept = _held.Values.ToList().FindLastIndex(held => !held.Lost);
            (Least, Greatest, Done) = (fails < 0 ? loads[^1] : 0.0, kept < 0 ? 0.0 : Above(kept), true);
        }
    }

    /// <summary>Least load that is lost, N m.</summary>
    public double Least { get; private set; }

    /// <summary>Above it, no load was held, N m.</summary>
    public double Greatest { get; private set; }

    /// <summary>Whether it is placed.</summary>
    public bool Done { get; private set; }

    /// <summary>Lightest load that is lost, as an index; -1 where none is.</summary>
    private int Fails => _held.Values.ToList().FindIndex(held => held.Lost);

    /// <summary>Loads to be held for longer, N m.</summary>
    public double[] Asks()
    {
        int fails = Fails;
        if (Done || fails == 0)
        {
            return [];
        }

        (double below, double above) = (_held.Keys[fails - 1], _held.Keys[fails]);
        int parts = Math.Clamp((int)Math.Ceiling(((above - below) / _grain) - Rounding), 1, Parts);
        IEnumerable<double> between = Enumerable.Range(0, parts).Select(i => below + (i * (above - below) / parts)).Where(load => load > below || !_held.Values[fails - 1].Lengthy);
        IEnumerable<double> lighter = _rough.Zip(_rough.Skip(1)).Where(pair => pair.Second <= below).TakeLast(Lighter).Select(pair => 0.5 * (pair.First + pair.Second)).Where(load => !_held.ContainsKey(load));
        IEnumerable<double> least = fails > 1 && !_held.Values[0].Lengthy ? [_held.Keys[0]] : [];
        IEnumerable<double> heavier = _held.Skip(fails).Where(held => !held.Value.Lost && !held.Value.Lengthy).Select(held => held.Key);
        return [.. least, .. lighter, .. between, .. heavier];
    }

    /// <summary>Takes what was asked for; nothing more once the edge is placed.</summary>
    /// <param name="loads">The loads, N m.</param>
    /// <param name="keptSeconds">For how long each kept sync, s; infinite where it was not lost.</param>
    /// <param name="briefSeconds">What is lost earlier was not held at all, s.</param>
    public void Take(double[] loads, double[] keptSeconds, double briefSeconds)
    {
        if (Done)
        {
            return;
        }

        Take(loads, keptSeconds, lengthy: true);
        int fails = Fails;
        if (Asks() is [])
        {
            int held = _held.Values.ToList().FindLastIndex(one => one.Lengthy && one.Seconds > briefSeconds);
            Least = fails == 0 ? 0.0 : 0.5 * (_held.Keys[fails - 1] + _held.Keys[fails]);
            Greatest = held < 0 ? 0.0 : Math.Max(Least, Above(held));
            Done = true;
        }
    }

    private void Take(double[] loads, double[] keptSeconds, bool lengthy)
    {
        for (int i = 0; i < loads.Length; i++)
        {
            _held[loads[i]] = new Held(keptSeconds[i], lengthy);
        }
    }

    /// <summary>Half-way to the next heavier load that was tried.</summary>
    private double Above(int index) => index + 1 < _held.Count ? 0.5 * (_held.Keys[index] + _held.Keys[index + 1]) : _held.Keys[index];

    /// <summary>How a load was held.</summary>
    /// <param name="Seconds">For how long it kept sync, s; infinite where it was not lost.</param>
    /// <param name="Lengthy">Whether it was held for the longer time.</param>
    private readonly record struct Held(double Seconds, bool Lengthy)
    {
        public bool Lost => !double.IsPositiveInfinity(Seconds);
    }
}
