using AxisSim.Core.Batches;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Studies;

/// <summary>Changes the constants or the state of a lane between two stretches of a run.</summary>
/// <param name="index">Which of the loads.</param>
/// <param name="row">Its constants.</param>
/// <param name="state">Its state.</param>
internal delegate void LaneChange(int index, ref LaneParameters row, ref LaneState state);

/// <summary>Lanes with one command that are stepped until they lose sync; those that do leave, and the others close ranks.</summary>
internal sealed class SteadyTeam
{
    private const int Steps = MoveRun.BlockSteps;

    private readonly LaneFeatures _features;
    private readonly double _step;
    private readonly LaneCommands _commands;
    private readonly ILaneEngine _engine;
    private readonly LaneParameters[] _rows;
    private readonly int[] _cases;
    private readonly double[] _lost;
    private readonly LaneSign[] _signs;
    private readonly LaneCommand[] _block = new LaneCommand[Steps];
    private readonly LaneStepKind[] _kinds = new LaneStepKind[Steps];
    private readonly LaneSplitDecays[] _decays = new LaneSplitDecays[Steps];

    // Of any lane: the electrical circuit is that of all.
    private LaneParameters _circuit;
    private LaneState _winding;
    private int _lanes;

    public SteadyTeam(LaneFeatures features, double stepSeconds, int lanes, LaneCommands commands, LaneParameters circuit)
    {
        (_features, _step, _lanes, _commands, _circuit) = (features, stepSeconds, lanes, commands, circuit);
        _engine = LaneWidths.Engine(BatchWidth.Best, lanes);
        _rows = new LaneParameters[lanes];
        _cases = [.. Enumerable.Range(0, lanes)];
        _lost = new double[lanes];
        Array.Fill(_lost, double.PositiveInfinity);
        _signs = new LaneSign[Vectors];
    }

    /// <summary>When each lost sync, s; infinite for those that keep it.</summary>
    public IReadOnlyList<double> LostSeconds => _lost;

    private int Vectors => ((_lanes - 1) / _engine.Width) + 1;

    /// <summary>Puts a lane in, before the first step.</summary>
    public void Put(int index, in LaneParameters row, in LaneState state)
    {
        _rows[index] = row;
        _engine.Put(index, row, state);
        _winding = state;
    }

    /// <summary>Changes each lane that still keeps sync.</summary>
    public void Change(LaneChange change)
    {
        for (int lane = 0; lane < _lanes; lane++)
        {
            int index = _cases[lane];
            LaneState state = _engine.State(lane);
            change(index, ref _rows[index], ref state);
            _engine.Put(lane, _rows[index], state);
        }
    }

    /// <summary>Steps to the end of the block in which a time lies.</summary>
    public void Run(double untilSeconds)
    {
        FillUp();
        var job = new LaneJob(_features, default, _step, Shared: true, OwnDecays: false);
        while (_lanes > 0 && _commands.Index * _step < untilSeconds)
        {
            _commands.Fill(_block, _kinds);
            for (int k = 0; k < Steps; k++)
            {
                if (_kinds[k].Split)
                {
                    LaneBlock.SplitDecays(_block[k].Split, ref _decays[k], ref _winding, ref _circuit);
                }
            }

            _engine.Commands(_block, _decays, _kinds, withDecays: true);
            _engine.End(_commands.PlanFullSteps);
            _engine.Block(Vectors, _kinds, job, _signs, []);
            if (_signs.AsSpan(0, Vectors).Contains(LaneSign.Attention))
            {
                TakeOut();
            }
        }
    }

    private void TakeOut()
    {
        int before = _lanes;
        for (int lane = before - 1; lane >= 0; lane--)
        {
            if (_signs[lane / _engine.Width] != LaneSign.Attention)
            {
                continue;
            }

            LaneState s = _engine.State(lane);
            if (LaneSetup.IsFinite(s) && Math.Abs(s.Rotor - (0.5 * s.RotorSpeed) - _commands.PlanFullSteps) <= MoveRun.LostFullSteps)
            {
                continue;
            }

            _lost[_cases[lane]] = _commands.Index * _step;
            _lanes--;
            _engine.Copy(_lanes, lane);
            _cases[lane] = _cases[_lanes];
        }

        if (_lanes < before)
        {
            FillUp();
        }
    }

    private void FillUp()
    {
        for (int i = _lanes; _lanes > 0 && i % _engine.Width != 0; i++)
        {
            _engine.Copy(_lanes - 1, i);
        }
    }
}
