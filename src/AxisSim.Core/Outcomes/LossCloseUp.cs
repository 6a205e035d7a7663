namespace AxisSim.Core.Outcomes;

/// <summary>Keeps the load angle shortly before and after sync is lost: a ring of stretches that turns until the moment of loss lies in it.</summary>
/// <remarks>The moment is when the load angle passes pi for the last time; that it was the last is known later, so each such moment is held until the rotor comes back.</remarks>
internal sealed class LossCloseUp
{
    /// <summary>Kept before the loss, s.</summary>
    public const double SecondsBefore = 0.25;

    /// <summary>Kept after the loss, s.</summary>
    public const double SecondsAfter = 0.15;

    /// <summary>Stretches, at most, over the kept time; each step has its own where that does.</summary>
    private const double MostStretches = 8192.0;

    private readonly double _step;
    private readonly int _length;
    private readonly double[] _least;
    private readonly double[] _greatest;
    private long _seen;
    private long _last;
    private int _next;
    private int _kept;
    private int _open;
    private bool _held;

    public LossCloseUp(double stepSeconds)
    {
        _step = stepSeconds;
        double steps = (SecondsBefore + SecondsAfter) / stepSeconds;
        _length = (int)Math.Ceiling(steps / MostStretches);
        int stretches = (int)Math.Ceiling(steps / _length) + 2;
        _least = new double[stretches];
        _greatest = new double[stretches];
    }

    /// <summary>Takes the next step.</summary>
    /// <param name="seconds">Its end, s.</param>
    /// <param name="loadAngle">Load angle there, electrical rad.</param>
    /// <param name="beyond">When the load angle passed pi and has not come back, s; not a number when it has.</param>
    public void See(double seconds, double loadAngle, double beyond)
    {
        _seen++;
        if (_held)
        {
            if (!double.IsNaN(beyond))
            {
                return;
            }

            (_held, _kept, _next, _open) = (false, 0, 0, 0);
        }

        if (_open == 0)
        {
            (_least[_next], _greatest[_next]) = (loadAngle, loadAngle);
        }
        else
        {
            _least[_next] = Math.Min(_least[_next], loadAngle);
            _greatest[_next] = Math.Max(_greatest[_next], loadAngle);
        }

        _last = _seen;
        _held = seconds >= beyond + SecondsAfter;
        if (++_open == _length)
        {
            Close();
        }
    }

    /// <summary>Hands over what lies about the loss.</summary>
    /// <param name="lostAt">When sync was lost, s.</param>
    /// <param name="into">Where the stretches go.</param>
    public void Finish(double lostAt, CloseUp into)
    {
        long end = _last - _open - ((long)_kept * _length);
        for (int i = _kept; i > 0; i--)
        {
            Add((_next - i + _least.Length) % _least.Length, end += _length, _length);
        }

        if (_open > 0)
        {
            Add(_next, _last, _open);
        }

        void Add(int slot, long last, int steps)
        {
            if (End(last) > lostAt - SecondsBefore)
            {
                into.Add(End(last - steps), End(last), _least[slot], _greatest[slot]);
            }
        }
    }

    private void Close()
    {
        _open = 0;
        _next = _next + 1 == _least.Length ? 0 : _next + 1;
        _kept = Math.Min(_kept + 1, _least.Length - 1);
    }

    /// <summary>End of a step, counted from 1 on, to the last bit as it was seen.</summary>
    private double End(long step) => step == 0 ? 0.0 : ((step - 1) * _step) + _step;
}
