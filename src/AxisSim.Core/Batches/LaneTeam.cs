using System.Runtime.CompilerServices;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Lanes;

namespace AxisSim.Core.Batches;

/// <summary>Cases that are stepped side by side from time 0; one that is decided leaves, and the others close ranks.</summary>
/// <remarks>What comes of a case does not depend on its neighbours: each lane computes the same bits in any place.</remarks>
internal sealed class LaneTeam
{
    private const int Steps = MoveRun.BlockSteps;

    // Often enough for Ctrl-C to act at once.
    private const int BlocksBetweenLooks = 64;

    private readonly ILaneEngine _engine;
    private readonly Action<LaneCase, BatchEnd, double> _decided;
    private readonly LaneCase[] _cases;
    private readonly LaneCommands[] _commands;
    private readonly LaneSkies[] _skies;
    private readonly LaneJob _job;
    private readonly double _step;
    private readonly LaneSign[] _signs;
    private readonly LaneStepKind[] _kinds;
    private readonly double _soonest;
    private int _lanes;

    /// <summary>Puts the cases into the engine.</summary>
    /// <param name="engine">With room for all.</param>
    /// <param name="cases">Alike in features, terms and step; in key too where they share their commands.</param>
    /// <param name="shared">Whether they do.</param>
    /// <param name="decided">Told of each case how it ended, and when, s.</param>
    public LaneTeam(ILaneEngine engine, IReadOnlyList<LaneCase> cases, bool shared, Action<LaneCase, BatchEnd, double> decided)
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

        FillUp();
        _soonest = cases.Min(c => c.UntilSeconds);
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
            bool constant = _job.Shared ? Share(start, end) : Give(start, end);
            _engine.Block(Vectors, _kinds, _job, _signs);
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
        LaneParameters p = _cases[0].Parameters;
        LaneState winding = _cases[0].Start;
        for (int k = 0; k < Steps; k++)
        {
            _kinds[k] = commands.Next(out LaneCommand command);
            _engine.Command(k, command, _kinds[k].Split);
            if (_kinds[k].Split && !_job.OwnParts)
            {
                LaneParts parts = default;
                LaneBlock.Parts(command.Split, ref parts, ref winding, ref p);
                _engine.Parts(k, parts);
            }
        }

        _engine.Plan(commands.PlanFullSteps);
        if (_job.Terms.Outside || _job.Terms.Inertia)
        {
            _engine.Sky(_skies[0].Between(start, end));
        }

        return constant;
    }

    /// <summary>Each lane its own; lanes that fill up the last vector get those of the last case.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Give(double start, double end)
    {
        bool constant = true;
        Array.Fill(_kinds, new LaneStepKind(false, LaneStepKind.Unity, LaneStepKind.Unity));
        for (int lane = 0; lane < _lanes; lane++)
        {
            constant &= IsConstant(lane, start);
            int last = lane == _lanes - 1 ? (Vectors * _engine.Width) - 1 : lane;
            LaneParameters p = _cases[lane].Parameters;
            for (int k = 0; k < Steps; k++)
            {
                LaneStepKind kind = _commands[lane].Next(out LaneCommand command);
                double first = LaneRows.Level(p, kind.FirstLevel);
                double second = LaneRows.Level(p, kind.SecondLevel);
                (command.FirstA, command.FirstB) = (first * command.FirstA, first * command.FirstB);
                (command.SecondA, command.SecondB) = (second * command.SecondA, second * command.SecondB);
                if (kind.Split)
                {
                    _kinds[(lane / _engine.Width * Steps) + k] = new LaneStepKind(true, LaneStepKind.Unity, LaneStepKind.Unity);
                }

                for (int i = lane; i <= last; i++)
                {
                    _engine.Command(k, i, command);
                }
            }

            LaneSky sky = _job.Terms.Outside || _job.Terms.Inertia ? _skies[lane].Between(start, end) : default;
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
            LaneSign sign = _signs[lane / _engine.Width];
            bool through = now >= _cases[lane].UntilSeconds || (constant && sign == LaneSign.Rests);
            if (sign != LaneSign.Attention && !through)
            {
                continue;
            }

            BatchEnd? end = sign == LaneSign.Attention ? End(lane) : null;
            if (end is null && !through)
            {
                continue;
            }

            _decided(_cases[lane], end ?? BatchEnd.Arrives, now);
            _lanes--;
            left = true;
            if (lane < _lanes)
            {
                _engine.Copy(_lanes, lane);
                _cases[lane] = _cases[_lanes];
                if (!_job.Shared)
                {
                    (_commands[lane], _skies[lane]) = (_commands[_lanes], _skies[_lanes]);
                }
            }
        }

        // What rests now may move again when its command does.
        Array.Clear(_signs);
        if (left && _lanes > 0)
        {
            FillUp();
        }
    }

    /// <summary>How a lane that asks for attention has ended; null when it goes on.</summary>
    private BatchEnd? End(int lane)
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
