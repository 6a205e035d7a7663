using System.Runtime.CompilerServices;
using AxisSim.Core.Mount;
using AxisSim.Core.Stepping;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Batches;

/// <summary>Gives the lanes of a team, whose other axis may move in ways of their own, the disturbances of each block.</summary>
internal sealed class OwnDisturbances
{
    private readonly ILaneEngine _engine;
    private readonly LaneTerms _terms;
    private readonly LaneDisturbances[] _disturbances;
    private readonly LaneDisturbances[] _winds;
    private readonly int[] _windOfLane;
    private readonly double[] _torques;
    private double _until = double.NegativeInfinity;

    /// <param name="engine">With the lanes in it.</param>
    /// <param name="cases">The case in each lane.</param>
    /// <param name="terms">Slow terms.</param>
    public OwnDisturbances(ILaneEngine engine, LaneCase[] cases, in LaneTerms terms)
    {
        (_engine, _terms) = (engine, terms);
        _disturbances = [.. cases.Select(c => c.Disturbances())];
        for (int lane = 0; lane < _disturbances.Length; lane++)
        {
            _engine.Disturbance(lane, _disturbances[lane].Start(terms));
        }

        // Lanes in the same wind ask once.
        var different = new List<Disturbances>();
        _windOfLane = new int[_disturbances.Length];
        for (int lane = 0; lane < _disturbances.Length; lane++)
        {
            int known = different.IndexOf(_disturbances[lane].Disturbances);
            _windOfLane[lane] = known >= 0 ? known : different.Count;
            if (known < 0)
            {
                different.Add(_disturbances[lane].Disturbances);
            }
        }

        _winds = [.. Enumerable.Range(0, different.Count).Select(i => _disturbances[Array.IndexOf(_windOfLane, i)])];
        _torques = new double[different.Count == 1 ? 1 : (((cases.Length - 1) / engine.Width) + 1) * engine.Width];
    }

    /// <summary>Sets the disturbances of a block.</summary>
    /// <param name="from">Its start, s.</param>
    /// <param name="to">Its end, s.</param>
    /// <param name="lanes">Lanes in use.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Give(double from, double to, int lanes)
    {
        if (to >= _until)
        {
            Tell(to, lanes);
        }

        if (_terms.Outside)
        {
            Winds(to, lanes);
        }

        _engine.Disturbances(((lanes - 1) / _engine.Width) + 1, _terms, from, to, _torques);
    }

    /// <summary>Whether nothing changes for a lane from a time on.</summary>
    public bool IsSteady(int lane, double seconds) => _disturbances[lane].IsSteady(seconds);

    /// <summary>A lane takes the place of another.</summary>
    public void Copy(int from, int to) => (_disturbances[to], _windOfLane[to]) = (_disturbances[from], _windOfLane[from]);

    /// <summary>Tells the engine what the lanes follow at a time; those that fill up the last vector follow the last.</summary>
    private void Tell(double seconds, int lanes)
    {
        _until = double.PositiveInfinity;
        int places = (((lanes - 1) / _engine.Width) + 1) * _engine.Width;
        for (int lane = 0; lane < places; lane++)
        {
            LaneOtherAxis other = _disturbances[Math.Min(lane, lanes - 1)].OtherAxis(seconds, out double until);
            _engine.OtherAxis(lane, other);
            _until = Math.Min(_until, until);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Winds(double seconds, int lanes)
    {
        if (_torques.Length == 1)
        {
            _torques[0] = _winds[0].Wind(seconds);
            return;
        }

        Span<double> torques = stackalloc double[_winds.Length];
        for (int i = 0; i < _winds.Length; i++)
        {
            torques[i] = _winds[i].Wind(seconds);
        }

        for (int lane = 0; lane < _torques.Length; lane++)
        {
            _torques[lane] = torques[_windOfLane[Math.Min(lane, lanes - 1)]];
        }
    }
}
