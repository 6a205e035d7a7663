using System.Runtime.CompilerServices;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Batches;

/// <summary>Where each lane points after every step from the end of its slew on.</summary>
/// <remarks>Blocks of all lanes are handed on to the trail of each lane a few at a time, so that memory does not grow with the time watched.</remarks>
internal sealed class LaneRecord
{
    private const int MostBlocks = 64;

    private readonly LaneCase[] _cases;
    private readonly LaneTrail[] _trails;
    private readonly double _step;
    private readonly int _width;
    private readonly long _firstBlock;
    private readonly List<(double[] Values, int Lanes)> _blocks = new(MostBlocks);
    private readonly Stack<double[]> _spare = new(MostBlocks);
    private readonly double[] _errors = new double[MoveRun.BlockSteps];
    private long _steps;

    /// <summary>An empty record.</summary>
    /// <param name="cases">The case in each lane; the array changes as lanes take the place of others.</param>
    /// <param name="step">Step, s.</param>
    /// <param name="width">Lanes of a vector.</param>
    public LaneRecord(LaneCase[] cases, double step, int width)
    {
        (_cases, _step, _width) = (cases, step, width);
        _firstBlock = Math.Max(0, (long)(cases.Min(c => c.SlewSeconds) / (MoveRun.BlockSteps * step)) - 1);
        _steps = _firstBlock * MoveRun.BlockSteps;
        _trails = [.. cases.Select(c => new LaneTrail(c.Trail()))];
    }

    /// <summary>Where the next block is to be written; empty while all still slew.</summary>
    /// <param name="block">Number of the block.</param>
    /// <param name="vectors">Vectors in use.</param>
    /// <param name="lanes">Lanes in use.</param>
    public Span<double> Next(long block, int vectors, int lanes)
    {
        if (block < _firstBlock)
        {
            return [];
        }

        if (_blocks.Count == MostBlocks)
        {
            for (int lane = 0; lane < lanes; lane++)
            {
                Drain(lane, _cases[lane]);
            }

            _steps += MostBlocks * MoveRun.BlockSteps;
            foreach ((double[] used, int _) in _blocks)
            {
                _spare.Push(used);
            }

            _blocks.Clear();
        }

        // Teams only shrink, so that what was large enough stays so.
        double[] values = _spare.TryPop(out double[]? spare) ? spare : new double[MoveRun.BlockSteps * vectors * _width];
        _blocks.Add((values, vectors * _width));
        return values;
    }

    /// <summary>A lane takes the place of another, with what has been written of it.</summary>
    public void Copy(int from, int to)
    {
        _trails[to] = _trails[from];
        foreach ((double[] values, int lanes) in _blocks)
        {
            for (int k = 0; k < MoveRun.BlockSteps; k++)
            {
                values[(k * lanes) + to] = values[(k * lanes) + from];
            }
        }
    }

    /// <summary>Pointing less plan of a lane that is through, in every step that ends after the slew, rad.</summary>
    public SettleTrail Errors(int lane, LaneCase item)
    {
        Drain(lane, item);
        return _trails[lane].Errors;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Drain(int lane, LaneCase item)
    {
        LaneTrail trail = _trails[lane];
        double slew = item.SlewSeconds;
        long index = _steps;
        foreach ((double[] values, int lanes) in _blocks)
        {
            int count = 0;
            for (int k = 0; k < MoveRun.BlockSteps; k++, index++)
            {
                double time = (index * _step) + _step;
                double plan = item.PlanAtAxis((index + 1) * _step, ref trail.Cursor);
                if (time > slew)
                {
                    _errors[count++] = values[(k * lanes) + lane] - plan;
                }
            }

            if (trail.Errors.Count == 0 && count > 0)
            {
                trail.Errors.Reserve(item.TrailSteps);
            }

            trail.Errors.Add(_errors.AsSpan(0, count));
        }
    }

    /// <summary>What is kept of one lane.</summary>
    private sealed class LaneTrail(SettleTrail errors)
    {
        // Place in the plan, which only goes forward.
        public int Cursor;

        public SettleTrail Errors => errors;
    }
}
