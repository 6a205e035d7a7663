using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace AxisSim.Core.Outcomes;

/// <summary>The errors of an axis in every step after its slew, as far as settling asks for them, in memory that hardly grows with the time watched.</summary>
/// <remarks>
/// The first 262144 steps are kept one by one. Later ones are kept as the least and the greatest of cells, 16384 of them for each doubling of the time: what
/// settles so late is told by the end of its cell, which is at most 1/16384 of the time too late, and never too early. The last steps, of which the rest is the mean,
/// are kept one by one in any case.
/// </remarks>
internal sealed class SettleTrail
{
    private const int ExactBits = 18;
    private const int ExactSteps = 1 << ExactBits;
    private const int CellBits = 14;
    private const int CellsOfDoubling = 1 << CellBits;

    private readonly double _step;
    private readonly List<double> _exact = [];
    private readonly List<(double Least, double Greatest)[]> _doublings = [];
    private readonly double[] _recent;
    private int _recentAt;
    private int _cells;
    private long _roomInCell;
    private double _firstAfterExact;
    private double _least = double.PositiveInfinity;
    private double _greatest = double.NegativeInfinity;

    /// <summary>An empty trail.</summary>
    /// <param name="stepSeconds">Spacing of the errors, s.</param>
    /// <param name="restSeconds">Time at the end over which the rest is averaged, s.</param>
    public SettleTrail(double stepSeconds, double restSeconds)
    {
        _step = stepSeconds;
        _recent = new double[Math.Max(1, (int)Math.Ceiling(restSeconds / stepSeconds))];
    }

    /// <summary>Number of errors.</summary>
    public long Count { get; private set; }

    /// <summary>Time from the first error to one step after the last, s.</summary>
    public double Seconds => Count * _step;

    /// <summary>Mean of the last errors.</summary>
    public double Rest
    {
        get
        {
            int count = Recent;
            double sum = 0.0;
            for (int i = 0; i < count; i++)
            {
                sum += RecentAt(i);
            }

            return sum / Math.Max(1, count);
        }
    }

    private int Recent => (int)Math.Min(Count, _recent.Length);

    /// <summary>Makes room for a number of steps that is known beforehand.</summary>
    public void Reserve(long steps) => _exact.EnsureCapacity((int)Math.Clamp(steps, 0, ExactSteps));

    /// <summary>Adds the errors of the next steps.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(ReadOnlySpan<double> errors)
    {
        if (Count + errors.Length > ExactSteps)
        {
            foreach (double error in errors)
            {
                Add(error);
            }

            return;
        }

        _exact.AddRange(errors);
        Count += errors.Length;
        (double least, double greatest) = (_least, _greatest);
        foreach (double error in errors)
        {
            (least, greatest) = (Math.Min(least, error), Math.Max(greatest, error));
        }

        (_least, _greatest) = (least, greatest);
        while (!errors.IsEmpty)
        {
            ReadOnlySpan<double> some = errors[..Math.Min(errors.Length, _recent.Length - _recentAt)];
            some.CopyTo(_recent.AsSpan(_recentAt));
            _recentAt = _recentAt + some.Length == _recent.Length ? 0 : _recentAt + some.Length;
            errors = errors[some.Length..];
        }
    }

    /// <summary>Adds the error of the next step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(double error)
    {
        if (Count < ExactSteps)
        {
            _exact.Add(error);
        }
        else
        {
            AddToCell(error);
        }

        Count++;
        (_least, _greatest) = (Math.Min(_least, error), Math.Max(_greatest, error));
        _recent[_recentAt] = error;
        _recentAt = _recentAt + 1 == _recent.Length ? 0 : _recentAt + 1;
    }

    /// <summary>Greatest excursion beyond a level towards <paramref name="direction"/> (+1 or -1); not below zero.</summary>
    public double Overshoot(double level, double direction) => Count == 0 ? 0.0 : Math.Max(0.0, direction > 0.0 ? _greatest - level : level - _least);

    /// <summary>Greatest distance of the last errors from a level.</summary>
    public double RestSwing(double level)
    {
        double most = 0.0;
        for (int i = 0; i < Recent; i++)
        {
            most = Math.Max(most, Math.Abs(RecentAt(i) - level));
        }

        return most;
    }

    /// <summary>Time after the first error from which all later ones lie within a tolerance of a level, s; null when the last one does not (<see cref="SettleLaw.Time"/>).</summary>
    public double? Time(double level, double tolerance)
    {
        if (Count <= ExactSteps)
        {
            return SettleLaw.Time(CollectionsMarshal.AsSpan(_exact), _step, level, tolerance);
        }

        int recent = Recent, last = recent - 1;
        while (last >= 0 && Math.Abs(RecentAt(last) - level) <= tolerance)
        {
            last--;
        }

        return last == recent - 1 ? null
            : last >= 0 ? SettleLaw.Crossing(Count - recent + last, RecentAt(last), RecentAt(last + 1), level, tolerance) * _step
            : OfCells(level, tolerance) ?? OfExact(level, tolerance);
    }

    private double? OfCells(double level, double tolerance)
    {
        for (int i = _cells - 1; i >= 0; i--)
        {
            (int doubling, int place) = Math.DivRem(i, CellsOfDoubling);
            (double least, double greatest) = _doublings[doubling][place];
            if (Math.Max(Math.Abs(least - level), Math.Abs(greatest - level)) > tolerance)
            {
                long end = ((long)ExactSteps << doubling) + ((place + 1L) << (doubling + ExactBits - CellBits));
                return Math.Min(end, Count - 1) * _step;
            }
        }

        return null;
    }

    private double OfExact(double level, double tolerance)
    {
        int i = ExactSteps - 1;
        while (i >= 0 && Math.Abs(_exact[i] - level) <= tolerance)
        {
            i--;
        }

        return i < 0 ? 0.0 : SettleLaw.Crossing(i, _exact[i], i + 1 < ExactSteps ? _exact[i + 1] : _firstAfterExact, level, tolerance) * _step;
    }

    private void AddToCell(double error)
    {
        if (Count == ExactSteps)
        {
            _firstAfterExact = error;
        }

        if (_roomInCell == 0)
        {
            if (_cells % CellsOfDoubling == 0)
            {
                _doublings.Add(new (double, double)[CellsOfDoubling]);
            }

            // Twice as many steps with each doubling of the time; cells never reach across one.
            _roomInCell = 1L << (BitOperations.Log2((ulong)Count) - CellBits);
            _doublings[^1][_cells % CellsOfDoubling] = (error, error);
            _cells++;
        }
        else
        {
            ref (double Least, double Greatest) cell = ref _doublings[^1][(_cells - 1) % CellsOfDoubling];
            cell = (Math.Min(cell.Least, error), Math.Max(cell.Greatest, error));
        }

        _roomInCell--;
    }

    // From the oldest of the last ones, 0, to the newest.
    private double RecentAt(int index)
    {
        int place = Count < _recent.Length ? index : _recentAt + index;
        return _recent[place < _recent.Length ? place : place - _recent.Length];
    }
}
