namespace AxisSim.Core.Motion;

/// <summary>A planned motion as cubic pieces in time, scaled to a shaft; read forwards in time by a cursor.</summary>
/// <remarks>Position <c>P + s (V + s (A/2 + s J/6))</c>, s time since the piece's start. After the last piece of the profile it goes on at the tracking rate.</remarks>
internal sealed class MotorPlan
{
    private readonly double[] _start;
    private readonly double[] _position;
    private readonly double[] _velocity;
    private readonly double[] _halfAcceleration;
    private readonly double[] _sixthJerk;

    /// <param name="startRadians">Axis angle at time 0.</param>
    /// <param name="profile">Profile of the slew at the axis.</param>
    /// <param name="trackingRate">Rate that is added throughout, rad/s at the axis.</param>
    /// <param name="ratio">Shaft turns per axis turn.</param>
    public MotorPlan(double startRadians, MotionProfile profile, double trackingRate, double ratio)
    {
        IReadOnlyList<MotionSegment> segments = profile.Segments;
        int count = segments.Count + 1;
        _start = new double[count];
        _position = new double[count];
        _velocity = new double[count];
        _halfAcceleration = new double[count];
        _sixthJerk = new double[count];
        for (int i = 0; i < segments.Count; i++)
        {
            MotionSegment s = segments[i];
            _start[i] = s.StartSeconds;
            _position[i] = ratio * (startRadians + s.Position + (trackingRate * s.StartSeconds));
            _velocity[i] = ratio * (s.Velocity + trackingRate);
            _halfAcceleration[i] = 0.5 * ratio * s.Acceleration;
            _sixthJerk[i] = ratio * s.Jerk / 6.0;
        }

        SlewSeconds = profile.DurationSeconds;
        _start[^1] = SlewSeconds;
        _position[^1] = ratio * (startRadians + profile.Distance + (trackingRate * SlewSeconds));
        _velocity[^1] = ratio * trackingRate;
        PeakSpeed = Enumerable.Range(0, count).Max(i => Math.Max(Math.Abs(Velocity(_start[i])), Math.Abs(VelocityAtEnd(i))));
    }

    /// <summary>All that the plan depends on.</summary>
    public IEnumerable<double> Numbers => [.. _start, .. _position, .. _velocity, .. _halfAcceleration, .. _sixthJerk];

    /// <summary>Whether the position is the same at all times from one on.</summary>
    public bool RestsFrom(double seconds) => seconds >= SlewSeconds && _velocity[^1] == 0.0;

    /// <summary>Duration of the slew, s.</summary>
    public double SlewSeconds { get; }

    /// <summary>Greatest planned speed, rad/s.</summary>
    public double PeakSpeed { get; }

    /// <summary>Position at a time not before that of the last call with the same cursor.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public double Position(double seconds, ref int cursor)
    {
        while (cursor + 1 < _start.Length && seconds >= _start[cursor + 1])
        {
            cursor++;
        }

        double s = seconds - _start[cursor];
        return _position[cursor] + (s * (_velocity[cursor] + (s * (_halfAcceleration[cursor] + (s * _sixthJerk[cursor])))));
    }

    public double Position(double seconds)
    {
        int cursor = 0;
        return Position(seconds, ref cursor);
    }

    public double Velocity(double seconds)
    {
        int i = Piece(seconds);
        double s = seconds - _start[i];
        return _velocity[i] + (s * ((2.0 * _halfAcceleration[i]) + (3.0 * s * _sixthJerk[i])));
    }

    public double Acceleration(double seconds)
    {
        int i = Piece(seconds);
        return (2.0 * _halfAcceleration[i]) + (6.0 * (seconds - _start[i]) * _sixthJerk[i]);
    }

    /// <summary>Times at which the planned speed passes a threshold, each with whether it is above it afterwards; the first entry is the state at time 0.</summary>
    public IReadOnlyList<(double TimeSeconds, bool Above)> Crossings(double speed)
    {
        var crossings = new List<(double, bool)> { (0.0, Math.Abs(_velocity[0]) > speed) };
        for (int i = 0; i < _start.Length; i++)
        {
            bool before = crossings[^1].Item2;
            bool first = Math.Abs(_velocity[i]) > speed;
            if (first != before)
            {
                crossings.Add((_start[i], first));
            }

            if (i + 1 < _start.Length && Math.Abs(VelocityAtEnd(i)) > speed != first)
            {
                crossings.Add((CrossingInside(i, speed, first), !first));
            }
        }

        return crossings;
    }

    private double CrossingInside(int piece, double speed, bool aboveAtStart)
    {
        double low = _start[piece];
        double high = _start[piece + 1];
        for (int k = 0; k < 60; k++)
        {
            double middle = 0.5 * (low + high);
            double s = middle - _start[piece];
            bool above = Math.Abs(_velocity[piece] + (s * ((2.0 * _halfAcceleration[piece]) + (3.0 * s * _sixthJerk[piece])))) > speed;
            (low, high) = above == aboveAtStart ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    private int Piece(double seconds)
    {
        int i = 0;
        while (i + 1 < _start.Length && seconds >= _start[i + 1])
        {
            i++;
        }

        return i;
    }

    private double VelocityAtEnd(int piece)
    {
        if (piece + 1 >= _start.Length)
        {
            return _velocity[piece];
        }

        double s = _start[piece + 1] - _start[piece];
        return _velocity[piece] + (s * ((2.0 * _halfAcceleration[piece]) + (3.0 * s * _sixthJerk[piece])));
    }
}
