using System.Runtime.CompilerServices;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Batches;

/// <summary>Cases that are stepped side by side from time 0; one that is decided leaves, and the others close ranks.</summary>
/// <remarks>What comes of a case does not depend on its neighbours: each lane computes the same bits in any place.</remarks>
internal sealed class LaneTeam
{
    private const int Steps = MoveRun.BlockSteps;

    // Often enough for Ctrl-C to act at once.
    private const int BlocksBetweenLooks = 64;

    // A swing at some hundreds of hertz is met in all its phases.
    private const double LookSeconds = 4.3e-3;

    private readonly ILaneEngine _engine;
    private readonly Action<LaneCase, BatchResult> _decided;
    private readonly LaneCase[] _cases;

    // Where all share them; else each lane has its own.
    private readonly LaneCommands? _sharedCommands;
    private readonly LaneDisturbances? _sharedDisturbances;
    private readonly OwnCommands? _ownCommands;
    private readonly OwnDisturbances? _ownDisturbances;
    private readonly LaneJob _job;
    private readonly double _step;
    private readonly LaneSign[] _signs;
    private readonly LaneStepKind[] _kinds;
    private readonly LaneCommand[] _block = new LaneCommand[Steps];
    private readonly LaneSplitDecays[] _decays = new LaneSplitDecays[Steps];

    // When each lane is to be looked at next, and since when its rotor has been calm, s.
    private readonly double[] _looks;
    private readonly double[] _calm;
    private double _soonest;

    // Of the first case, for what all have in common.
    private LaneParameters _firstParameters;
    private LaneState _firstState;
    private readonly LaneRecord? _record;
    private int _lanes;

    /// <summary>Puts the cases into the engine.</summary>
    /// <param name="engine">With room for all.</param>
    /// <param name="cases">Alike in features, terms and step; in key too where they share their commands.</param>
    /// <param name="shared">Whether they do.</param>
    /// <param name="decided">Told of each case what came of it.</param>
    public LaneTeam(ILaneEngine engine, IReadOnlyList<LaneCase> cases, bool shared, Action<LaneCase, BatchResult> decided)
    {
        LaneCase first = cases[0];
        (_engine, _decided, _cases, _lanes, _step) = (engine, decided, [.. cases], cases.Count, first.Choice.StepSeconds);
        bool ownDecays = !shared || first.Terms.Heat || cases.Any(c => !SameCircuit(c.Parameters, first.Parameters));
        _job = new LaneJob(first.Features, first.Terms, _step, shared, ownDecays);
        _signs = new LaneSign[Vectors];
        _kinds = new LaneStepKind[Steps * (shared ? 1 : Vectors)];
        for (int i = 0; i < _lanes; i++)
        {
            engine.Put(i, cases[i].Parameters, cases[i].Start);
        }

        (_firstParameters, _firstState) = (first.Parameters, first.Start);
        if (shared)
        {
            (_sharedCommands, _sharedDisturbances) = (first.Commands(), first.Disturbances());
        }
        else
        {
            (_ownCommands, _ownDisturbances) = (new OwnCommands(engine, _cases), new OwnDisturbances(engine, _cases, first.Terms));
        }

        FillUp();
        _looks = [.. cases.Select(c => c.HeldFromSeconds)];
        _calm = [.. _looks];
        _soonest = _looks.Min();
        _record = first.Settles ? new LaneRecord(_cases, _step, engine.Width) : null;
    }

    private int Vectors => ((_lanes - 1) / _engine.Width) + 1;

    /// <summary>Runs until every case is decided.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(CancellationToken stop)
    {
        for (long block = 0; _lanes > 0; block++)
        {
            if (block % BlocksBetweenLooks == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            double start = block * Steps * _step;
            double end = (block + 1) * Steps * _step;
            bool constant = _record is null && IsConstant(start);
            Give(block * Steps, start, end);
            _engine.Block(Vectors, _kinds, _job, _signs, _record is null ? [] : _record.Next(block, Vectors, _lanes));
            Decide((block + 1) * Steps, constant);
        }
    }

    private static bool SameCircuit(in LaneParameters a, in LaneParameters b) =>
        a.ColdResistance == b.ColdResistance && a.Inductance == b.Inductance && a.RegulatorRate == b.RegulatorRate;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Give(long firstStep, double start, double end)
    {
        if (_sharedCommands is not { } commands)
        {
            _ownCommands!.Give(firstStep, _lanes, _kinds);
            _ownDisturbances!.Give(start, end, _lanes);
            return;
        }

        commands.Fill(_block, _kinds);
        for (int k = 0; !_job.OwnDecays && k < Steps; k++)
        {
            if (_kinds[k].Split)
            {
                LaneBlock.SplitDecays(_block[k].Split, ref _decays[k], ref _firstState, ref _firstParameters);
            }
        }

        _engine.Commands(_block, _decays, _kinds, !_job.OwnDecays);
        _engine.End(commands.PlanFullSteps);
        _engine.Disturbance(_sharedDisturbances!.Between(_job.Terms, start, end));
    }

    /// <summary>Whether nothing changes any more for any lane.</summary>
    private bool IsConstant(double seconds)
    {
        if (_job.Terms.Heat || _job.Terms.Inertia)
        {
            return false;
        }

        if (_sharedCommands is { } commands)
        {
            return commands.IsConstant(seconds) && _sharedDisturbances!.IsSteady(seconds);
        }

        for (int lane = 0; lane < _lanes; lane++)
        {
            if (!_ownCommands!.IsConstant(lane, seconds) || !_ownDisturbances!.IsSteady(lane, seconds))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Decide(long steps, bool constant)
    {
        double now = steps * _step;
        if (now < _soonest && !constant && !_signs.AsSpan(0, Vectors).Contains(LaneSign.Attention))
        {
            return;
        }

        bool left = false;

        // From the last to the first, so that the place of one that leaves is taken by one already looked at.
        for (int lane = _lanes - 1; lane >= 0; lane--)
        {
            LaneCase item = _cases[lane];
            LaneSign sign = _signs[lane / _engine.Width];
            BatchEnd? failed = sign == LaneSign.Attention ? Failed(lane, steps) : null;
            bool through = now >= item.UntilSeconds || (constant && sign == LaneSign.Rests) || (now >= _looks[lane] && IsHeld(lane, steps));
            if (failed is null && !through)
            {
                continue;
            }

            Tell(item, failed, now, failed is null ? _record?.Errors(lane, item) : null, _engine.State(lane));
            left = true;
            Leave(lane);
        }

        if (_lanes == 0)
        {
            return;
        }

        _soonest = _looks.AsSpan(0, _lanes)[0];
        foreach (double look in _looks.AsSpan(1, _lanes - 1))
        {
            _soonest = Math.Min(_soonest, look);
        }

        if (left)
        {
            FillUp();
            _ownCommands?.Look(_lanes);
        }
    }

    /// <summary>Looks at a lane whose own slew is over: whether it is known to keep its place.</summary>
    private bool IsHeld(int lane, long steps)
    {
        double now = steps * _step;
        if (!(Math.Abs(Lag(lane, _engine.State(lane), steps)) <= HeldAxis.CalmFullSteps))
        {
            _calm[lane] = now;
        }

        _looks[lane] = Math.Min(_cases[lane].UntilSeconds, now + LookSeconds);
        return now - _calm[lane] >= LaneCase.BeyondSeconds;
    }

    private void Tell(LaneCase item, BatchEnd? failed, double now, SettleTrail? errors, in LaneState state)
    {
        foreach (LaneCase one in item.Alike)
        {
            _decided(one, failed is { } end ? one.Result(end, now) : one.Result(errors, state));
        }
    }

    private void Leave(int lane)
    {
        _lanes--;
        if (lane == _lanes)
        {
            return;
        }

        _engine.Copy(_lanes, lane);
        _record?.Copy(_lanes, lane);
        _cases[lane] = _cases[_lanes];
        (_looks[lane], _calm[lane]) = (_looks[_lanes], _calm[_lanes]);
        _ownCommands?.Copy(_lanes, lane);
        _ownDisturbances?.Copy(_lanes, lane);
    }

    /// <summary>How a lane that asks for attention has failed; null when it goes on.</summary>
    private BatchEnd? Failed(int lane, long steps)
    {
        LaneState s = _engine.State(lane);
        return !LaneSetup.IsFinite(s) ? BatchEnd.Broken
            : s.Slip != 0.0 ? BatchEnd.ClutchSlips
            : Math.Abs(Lag(lane, s, steps)) > MoveRun.LostFullSteps ? BatchEnd.Stalls
            : null;
    }

    /// <summary>Rotor less its command, full steps.</summary>
    private double Lag(int lane, in LaneState s, long steps) =>
        s.Rotor - (0.5 * s.RotorSpeed) - (_ownCommands?.PlanFullSteps(lane, steps) ?? _sharedCommands!.PlanFullSteps);

    private void FillUp()
    {
        for (int i = _lanes; i < Vectors * _engine.Width; i++)
        {
            _engine.Copy(_lanes - 1, i);
        }
    }
}
