using System.Runtime.CompilerServices;
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

    private readonly ILaneEngine _engine;
    private readonly Action<LaneCase, BatchResult> _decided;
    private readonly LaneCase[] _cases;
    private readonly LaneCommands[] _commands;
    private readonly LaneSkies[] _skies;
    private readonly LaneJob _job;
    private readonly double _step;
    private readonly LaneSign[] _signs;
    private readonly LaneStepKind[] _kinds;
    private readonly LaneStepKind[] _ownKinds = new LaneStepKind[Steps];
    private readonly LaneCommand[] _block = new LaneCommand[Steps];
    private readonly LaneParts[] _parts = new LaneParts[Steps];
    private readonly double _soonest;

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
        bool ownParts = !shared || first.Terms.Heat || cases.Any(c => !SameCircuit(c.Parameters, first.Parameters));
        _job = new LaneJob(first.Features, first.Terms, _step, shared, ownParts);
        _signs = new LaneSign[Vectors];
        _kinds = new LaneStepKind[Steps * (shared ? 1 : Vectors)];
        int sources = shared ? 1 : cases.Count;
        _commands = [.. cases.Take(sources).Select(c => c.Commands())];
        _skies = [.. cases.Take(sources).Select(c => c.Skies())];
        for (int i = 0; i < _lanes; i++)
        {
            engine.Put(i, cases[i].Parameters, cases[i].Start);
        }

        (_firstParameters, _firstState) = (first.Parameters, first.Start);
        FillUp();
        _soonest = cases.Min(c => c.UntilSeconds);
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
            bool constant = (_job.Shared ? Share(start, end) : Give(start, end)) && _record is null;
            _engine.Block(Vectors, _kinds, _job, _signs, _record is null ? [] : _record.Next(block, Vectors, _lanes));
            Decide(end, constant);
        }
    }

    private static bool SameCircuit(in LaneParameters a, in LaneParameters b) =>
        a.ColdResistance == b.ColdResistance && a.Inductance == b.Inductance && a.RegulatorRate == b.RegulatorRate;

    /// <summary>One command and sky for all; true when nothing changes any more.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Share(double start, double end)
    {
        LaneCommands commands = _commands[0];
        bool constant = IsConstant(0, start);
        commands.Fill(_block, _kinds);
        for (int k = 0; !_job.OwnParts && k < Steps; k++)
        {
            if (_kinds[k].Split)
            {
                LaneBlock.Parts(_block[k].Split, ref _parts[k], ref _firstState, ref _firstParameters);
            }
        }

        _engine.Commands(_block, _parts, _kinds, !_job.OwnParts);
        _engine.Plan(commands.PlanFullSteps);
        _engine.Sky(_skies[0].Between(_job.Terms, start, end));
        return constant;
    }

    /// <summary>Each lane its own; lanes that fill up the last vector get those of the last case.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Give(double start, double end)
    {
        bool constant = true;
        Array.Fill(_kinds, new LaneStepKind(false, LaneLevel.Unity, LaneLevel.Unity, false));
        for (int lane = 0; lane < _lanes; lane++)
        {
            constant &= IsConstant(lane, start);
            int last = lane == _lanes - 1 ? (Vectors * _engine.Width) - 1 : lane;
            LaneParameters p = _cases[lane].Parameters;
            _commands[lane].Fill(_block, _ownKinds);
            for (int k = 0; k < Steps; k++)
            {
                LaneStepKind kind = _ownKinds[k];
                ref LaneCommand command = ref _block[k];
                double first = p.Levels.Of(kind.FirstLevel);
                double second = p.Levels.Of(kind.SecondLevel);
                (command.FirstA, command.FirstB) = (first * command.FirstA, first * command.FirstB);
                (command.SecondA, command.SecondB) = (second * command.SecondA, second * command.SecondB);
                ref LaneStepKind ofVector = ref _kinds[(lane / _engine.Width * Steps) + k];
                ofVector = new LaneStepKind(ofVector.Split || kind.Split, LaneLevel.Unity, LaneLevel.Unity, ofVector.Pushed || kind.Pushed, mixed: true);

                for (int i = lane; i <= last; i++)
                {
                    _engine.Command(k, i, command);
                }
            }

            LaneSky sky = _skies[lane].Between(_job.Terms, start, end);
            for (int i = lane; i <= last; i++)
            {
                _engine.Plan(i, _commands[lane].PlanFullSteps);
                _engine.Sky(i, sky);
            }
        }

        return constant;
    }

    private bool IsConstant(int source, double seconds) =>
        _commands[source].Constant && !_job.Terms.Heat && !_job.Terms.Inertia && _skies[source].IsSteady(seconds);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Decide(double now, bool constant)
    {
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
            bool through = now >= item.UntilSeconds || (constant && sign == LaneSign.Rests);
            BatchEnd? failed = sign == LaneSign.Attention ? Failed(lane) : null;
            if (failed is null && !through)
            {
                continue;
            }

            _decided(item, failed is { } end ? item.Result(end, now) : item.Result(_record?.Errors(lane, item), _engine.State(lane)));
            left = true;
            Leave(lane);
        }

        if (left && _lanes > 0)
        {
            FillUp();
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
        if (!_job.Shared)
        {
            (_commands[lane], _skies[lane]) = (_commands[_lanes], _skies[_lanes]);
        }
    }

    /// <summary>How a lane that asks for attention has failed; null when it goes on.</summary>
    private BatchEnd? Failed(int lane)
    {
        LaneState s = _engine.State(lane);
        int source = _job.Shared ? 0 : lane;
        double lag = s.Rotor - (0.5 * s.RotorSpeed) - _commands[source].PlanFullSteps;
        return !LaneRows.IsFinite(s) ? BatchEnd.Broken
            : s.Slip != 0.0 ? BatchEnd.ClutchSlips
            : Math.Abs(lag) > MoveRun.LostFullSteps ? BatchEnd.Stalls
            : null;
    }

    private void FillUp()
    {
        for (int i = _lanes; i < Vectors * _engine.Width; i++)
        {
            _engine.Copy(_lanes - 1, i);
        }
    }
}
