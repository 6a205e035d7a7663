using System.Runtime.CompilerServices;

namespace AxisSim.Core.Drives;

/// <summary>Sine and cosine of a command that is quantised to microsteps, averaged over any stretch of the plan.</summary>
/// <remarks>
/// The command takes the microstep nearest to the plan. Its mean over a stretch of uniform speed is the difference of running
/// sums at both ends; the sums are kept for one electrical turn (a whole turn adds nothing).
/// </remarks>
internal sealed class MicrostepTable
{
    private readonly int _size;
    private readonly MicrostepRow[] _rows;
    private readonly double _cellsPerRadian;

    private static readonly System.Collections.Concurrent.ConcurrentDictionary<int, MicrostepTable> Known = new();

    /// <summary>The table of a number of microsteps, made once.</summary>
    public static MicrostepTable Of(int microstepsPerFullStep) => Known.GetOrAdd(microstepsPerFullStep, static n => new MicrostepTable(n));

    public MicrostepTable(int microstepsPerFullStep)
    {
        _size = 4 * microstepsPerFullStep;
        _cellsPerRadian = _size / (2.0 * Math.PI);
        _rows = new MicrostepRow[_size];
        for (int k = 0; k < _size; k++)
        {
            (_rows[k].Sin, _rows[k].Cos) = QuarterTurn(k, microstepsPerFullStep);
        }

        for (int k = 1; k < _size; k++)
        {
            _rows[k].CosSum = _rows[k - 1].CosSum + _rows[k - 1].Cos;
            _rows[k].SinSum = _rows[k - 1].SinSum + _rows[k - 1].Sin;
        }
    }

    /// <summary>The microsteps of an electrical turn, each with its sums; not to be written to.</summary>
    public MicrostepRow[] Rows => _rows;

    /// <summary>Microsteps per electrical rad.</summary>
    public double CellsPerRadian => _cellsPerRadian;

    /// <summary>Mean of cosine and sine of the quantised electrical angle between two angles of the plan, rad.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (double Cos, double Sin) Mean(double fromRadians, double toRadians)
    {
        // Cell k covers half a microstep to either side of microstep k.
        double from = (fromRadians * _cellsPerRadian) + 0.5;
        double to = (toRadians * _cellsPerRadian) + 0.5;
        double fromCell = Math.Floor(from);
        double toCell = Math.Floor(to);
        ref readonly MicrostepRow i = ref _rows[Index(fromCell)];
        if (fromCell == toCell)
        {
            return (i.Cos, i.Sin);
        }

        ref readonly MicrostepRow j = ref _rows[Index(toCell)];
        double r = from - fromCell;
        double q = to - toCell;
        if (Math.Abs(toCell - fromCell) == 1.0)
        {
            // Neighbours: weigh the two directly, for at low speed the difference of the running sums would lose its digits.
            double first = toCell > fromCell ? 1.0 - r : r;
            double second = toCell > fromCell ? q : 1.0 - q;
            double whole = 1.0 / (first + second);
            return (((first * i.Cos) + (second * j.Cos)) * whole, ((first * i.Sin) + (second * j.Sin)) * whole);
        }

        double scale = 1.0 / (to - from);
        return (
            (j.CosSum - i.CosSum + (q * j.Cos) - (r * i.Cos)) * scale,
            (j.SinSum - i.SinSum + (q * j.Sin) - (r * i.Sin)) * scale);
    }

    /// <summary>Sine and cosine built from the first eighth of a turn, so that the table is symmetric to the last bit.</summary>
    private static (double Sin, double Cos) QuarterTurn(int k, int quarter)
    {
        int turn = k / quarter;
        int inside = k % quarter;
        double s = First(inside, quarter);
        double c = First(quarter - inside, quarter);
        return turn switch
        {
            0 => (s, c),
            1 => (c, -s),
            2 => (-s, -c),
            _ => (-c, s),
        };
    }

    private static double First(int k, int quarter)
    {
        double x = 0.5 * Math.PI * k / quarter;
        return 2 * k <= quarter ? Math.Sin(x) : Math.Cos(0.5 * Math.PI * (quarter - k) / quarter);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Index(double cell)
    {
        // Sizes are powers of two on nearly every drive.
        if ((_size & (_size - 1)) == 0)
        {
            return (int)((long)cell & (_size - 1));
        }

        long k = (long)cell % _size;
        return (int)(k < 0 ? k + _size : k);
    }
}
