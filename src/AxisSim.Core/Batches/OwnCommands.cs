using System.Runtime.CompilerServices;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Stepping;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Batches;

/// <summary>Gives the lanes of a team, which have plans of their own, the commands of each block.</summary>
/// <remarks>
/// The engine works them out for a whole vector (<see cref="LaneDrive"/>) where nothing changes inside the block: no piece of a plan ends, no mode or current changes. Other blocks,
/// some ten of a lane's whole move, are worked out lane by lane. Both give the same bits.
/// </remarks>
internal sealed class OwnCommands
{
    private const int Steps = MoveRun.BlockSteps;

    private readonly ILaneEngine _engine;
    private readonly LaneCase[] _cases;
    private readonly LaneCommands[] _commands;
    private readonly double _step;
    private readonly SyncProbe? _probe;
    private readonly Quiet[] _quiet;
    private readonly double[] _probes = new double[Steps];
    private readonly LaneCommand[] _block = new LaneCommand[Steps];
    private readonly LaneStepKind[] _ownKinds = new LaneStepKind[Steps];

    /// <param name="engine">With the lanes in it.</param>
    /// <param name="cases">The case in each lane; the array changes as lanes take the place of others.</param>
    public OwnCommands(ILaneEngine engine, LaneCase[] cases)
    {
        (_engine, _cases, _step) = (engine, cases, cases[0].Choice.StepSeconds);
        _commands = [.. cases.Select(c => c.Commands())];
        _probe = _commands.Any(c => c.Probes) ? new SyncProbe(1.0, double.PositiveInfinity) : null;
        _quiet = new Quiet[((cases.Length - 1) / engine.Width) + 1];
        Look(cases.Length);
    }

    /// <summary>Sets the commands of a block.</summary>
    /// <param name="first">Number of its first step.</param>
    /// <param name="lanes">Lanes in use.</param>
    /// <param name="kinds">Takes what the steps are, vector after vector.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Give(long first, int lanes, Span<LaneStepKind> kinds)
    {
        ReadOnlySpan<double> probes = Probes(first);
        var times = new LaneTimes(first, _step, probes);
        int width = _engine.Width;
        for (int vector = 0; vector * width < lanes; vector++)
        {
            ref Quiet quiet = ref _quiet[vector];
            int from = vector * width;
            int to = Math.Min(lanes, from + width);
            Span<LaneStepKind> ofVector = kinds.Slice(vector * Steps, Steps);
            if (quiet.PieceEnd > times.Start(Steps) && quiet.Event >= times.Start(Steps - 1) + _step)
            {
                if (!quiet.Told)
                {
                    Tell(from, to);
                    quiet.Told = true;
                }

                _engine.Drive(vector, times, ofVector);
            }
            else
            {
                OneByOne(first, from, to, ofVector);
                Look(vector, to);
            }
        }
    }

    /// <summary>Planned angle of a lane after some steps, full steps.</summary>
    public double PlanFullSteps(int lane, long steps)
    {
        _commands[lane].GoTo(steps);
        return _commands[lane].PlanFullSteps;
    }

    /// <summary>Whether all commands of a lane from a time on are the same.</summary>
    public bool IsConstant(int lane, double seconds) => _commands[lane].IsConstant(seconds);

    /// <summary>A lane takes the place of another.</summary>
    public void Copy(int from, int to) => _commands[to] = _commands[from];

    /// <summary>Looks again at what each vector holds, after lanes have left.</summary>
    public void Look(int lanes)
    {
        for (int vector = 0; vector * _engine.Width < lanes; vector++)
        {
            Look(vector, Math.Min(lanes, (vector + 1) * _engine.Width));
        }
    }

    private void Look(int vector, int to)
    {
        ref Quiet quiet = ref _quiet[vector];
        quiet = new Quiet { PieceEnd = double.PositiveInfinity, Event = double.PositiveInfinity };
        for (int lane = vector * _engine.Width; lane < to; lane++)
        {
            quiet.PieceEnd = Math.Min(quiet.PieceEnd, _commands[lane].PieceEndSeconds);
            quiet.Event = Math.Min(quiet.Event, _commands[lane].EventSeconds);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private ReadOnlySpan<double> Probes(long first)
    {
        if (_probe is not { } probe)
        {
            return [];
        }

        for (int k = 0; k < Steps; k++)
        {
            _probes[k] = probe.Mean((first + k) * _step, _step);
        }

        return _probes;
    }

    /// <summary>Tells the engine what the lanes of a vector follow; those that fill it up follow the last.</summary>
    private void Tell(int from, int to)
    {
        for (int lane = from; lane < to; lane++)
        {
            LanePlan plan = _commands[lane].Plan(_cases[lane].Parameters);
            for (int i = lane; i <= LastAlike(lane, to); i++)
            {
                _engine.Plan(i, plan, _commands[lane].Microsteps);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void OneByOne(long first, int from, int to, Span<LaneStepKind> ofVector)
    {
        ofVector.Fill(new LaneStepKind(false, LaneLevel.Unity, LaneLevel.Unity, false, mixed: true));
        for (int lane = from; lane < to; lane++)
        {
            LaneCommands commands = _commands[lane];
            LaneParameters p = _cases[lane].Parameters;
            int last = LastAlike(lane, to);
            commands.GoTo(first);
            commands.Fill(_block, _ownKinds);
            for (int k = 0; k < Steps; k++)
            {
                LaneStepKind kind = _ownKinds[k];
                ref LaneCommand command = ref _block[k];
                double before = p.Levels.Of(kind.FirstLevel);
                double after = p.Levels.Of(kind.SecondLevel);
                (command.FirstA, command.FirstB) = (before * command.FirstA, before * command.FirstB);
                (command.SecondA, command.SecondB) = (after * command.SecondA, after * command.SecondB);
                ofVector[k] = new LaneStepKind(ofVector[k].Split || kind.Split, LaneLevel.Unity, LaneLevel.Unity, ofVector[k].Pushed || kind.Pushed, mixed: true);
                for (int i = lane; i <= last; i++)
                {
                    _engine.Command(k, i, command);
                }
            }

            for (int i = lane; i <= last; i++)
            {
                _engine.End(i, commands.PlanFullSteps);
            }
        }
    }

    /// <summary>Last of the lanes that do what one does: the last lane in use has those with it that fill up its vector.</summary>
    private int LastAlike(int lane, int to) => lane == to - 1 ? (((lane / _engine.Width) + 1) * _engine.Width) - 1 : lane;

    /// <summary>Until when nothing changes in a vector.</summary>
    private struct Quiet
    {
        /// <summary>Earliest end of a lane's piece, s.</summary>
        public double PieceEnd;

        /// <summary>Earliest change of a lane's mode or current, s.</summary>
        public double Event;

        /// <summary>Whether the engine knows the plans as they are.</summary>
        public bool Told;
    }
}
