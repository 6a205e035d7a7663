using AxisSim.Core.Stepping;

namespace AxisSim.Core.Batches;

/// <summary>Where each lane points after every step from the end of its slew on.</summary>
internal sealed class LaneRecord
{
    private readonly double _step;
    private readonly int _width;
    private readonly long _firstBlock;
    private readonly List<(double[] Values, int Lanes)> _blocks = [];

    public LaneRecord(IReadOnlyList<LaneCase> cases, double step, int width)
    {
        (_step, _width) = (step, width);
        _firstBlock = (long)(cases.Min(c => c.SlewSeconds) / (MoveRun.BlockSteps * step)) - 1;
    }

    /// <summary>Where the next block is to be written; empty while all still slew.</summary>
    public Span<double> Next(long block, int vectors)
    {
        if (block < _firstBlock)
        {
            return [];
        }

        int lanes = vectors * _width;
        double[] values = new double[MoveRun.BlockSteps * lanes];
        _blocks.Add((values, lanes));
        return values;
    }

    /// <summary>A lane takes the place of another, with what has been written of it.</summary>
    public void Copy(int from, int to)
    {
        foreach ((double[] values, int lanes) in _blocks)
        {
            for (int k = 0; k < MoveRun.BlockSteps; k++)
            {
                values[(k * lanes) + to] = values[(k * lanes) + from];
            }
        }
    }

    /// <summary>Pointing less plan of a lane in every step that ends after the slew, rad.</summary>
    public double[] Errors(int lane, LaneCase item)
    {
        var errors = new List<double>(_blocks.Count * MoveRun.BlockSteps);
        int cursor = 0;
        long index = Math.Max(0, _firstBlock) * MoveRun.BlockSteps;
        foreach ((double[] values, int lanes) in _blocks)
        {
            for (int k = 0; k < MoveRun.BlockSteps; k++, index++)
            {
                double time = (index * _step) + _step;
                double plan = item.PlanAtAxis((index + 1) * _step, ref cursor);
                if (time > item.SlewSeconds)
                {
                    errors.Add(values[(k * lanes) + lane] - plan);
                }
            }
        }

        return [.. errors];
    }
}
