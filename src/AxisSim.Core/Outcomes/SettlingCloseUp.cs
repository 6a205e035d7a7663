using System.Numerics;

namespace AxisSim.Core.Outcomes;

/// <summary>Keeps the settle error from the end of the slew on, in stretches that lengthen with the time passed.</summary>
/// <remarks>
/// A stretch is about a thousandth of the time since the end of the slew: whatever part of the observed time a figure shows, from its beginning on, it has
/// a thousand stretches or every step of it. Their number grows by a thousand each time the observed time doubles.
/// </remarks>
internal sealed class SettlingCloseUp
{
    /// <summary>Stretches, at least, from the end of the slew to any later time; a power of two.</summary>
    private const int Fineness = 1024;

    private readonly CloseUp _into;
    private OneStretch _now;
    private long _seen;
    private int _length = 1;

    /// <summary>An empty close-up.</summary>
    /// <param name="into">Where the stretches go.</param>
    /// <param name="steps">Steps that are to come, more or less.</param>
    public SettlingCloseUp(CloseUp into, double steps)
    {
        _into = into;
        into.EnsureCapacity((int)Math.Min(steps + 1.0, Fineness * (2.0 + Math.Log2(1.0 + (steps / Fineness)))));
    }

    public void See(double fromSeconds, double toSeconds, double value)
    {
        if (_now.Steps == 0)
        {
            _now = OneStretch.At(fromSeconds);
        }

        _now.Take(toSeconds, value);
        _seen++;
        if (_now.Steps == _length)
        {
            Finish();
            _length = 1 << BitOperations.Log2((ulong)Math.Max(1L, _seen / Fineness));
        }
    }

    /// <summary>Puts away the stretch at the end of the run.</summary>
    public void Finish()
    {
        if (_now.Steps > 0)
        {
            _into.Add(_now.FromSeconds, _now.ToSeconds, _now.Least, _now.Greatest);
            _now.Steps = 0;
        }
    }
}
