namespace AxisSim.Core.Motion;

/// <summary>A planned motion as cubic pieces in time, scaled to a shaft; read forwards in time by a cursor.</summary>
/// <remarks>The law of a piece: <see cref="PlanPiece"/>. After the last piece of the profile it goes on at the tracking rate.</remarks>
internal sealed class MotorPlan
{
    private readonly PlanPiece[] _pieces;

    /// <param name="startRadians">Axis angle at time 0.</param>
    /// <param name="profile">Profile of the slew at the axis.</param>
    /// <param name="trackingRate">Rate that is added throughout, rad/s at the axis.</param>
    /// <param name="ratio">Shaft turns per axis turn.</param>
    public MotorPlan(double startRadians, MotionProfile profile, double trackingRate, double ratio)
    {
        IReadOnlyList<MotionSegment> segments = profile.Segments;
        int count = segments.Count + 1;
        _pieces = new PlanPiece[count];
        for (int i = 0; i < segments.Count; i++)
        {
            MotionSegment s = segments[i];
            _pieces[i] = new PlanPiece(
                s.StartSeconds,
                ratio * (startRadians + s.Position + (trackingRate * s.StartSeconds)),
                ratio * (s.Velocity + trackingRate),
                0.5 * ratio * s.Acceleration,
                ratio * s.Jerk / 6.0);
        }

        SlewSeconds = profile.DurationSeconds;
        _pieces[^1] = new PlanPiece(SlewSeconds, ratio * (startRadians + profile.Distance + (trackingRate * SlewSeconds)), ratio * trackingRate, 0.0, 0.0);
        for (int i = 0; i + 1 < count; i++)
        {
            _pieces[i] = _pieces[i] with { End = _pieces[i + 1].Start };
        }

        PeakSpeed = Enumerable.Range(0, count).Max(i => Math.Max(Math.Abs(Velocity(_pieces[i].Start)), Math.Abs(VelocityAtEnd(i))));
    }

    /// <summary>All that the plan depends on.</summary>
    public IEnumerable<double> Numbers => _pieces.SelectMany(p => new[] { p.Start, p.Position, p.Velocity, p.HalfAcceleration, p.SixthJerk });

    /// <summary>Whether the position is the same at all times from one on.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public bool RestsFrom(double seconds) => seconds >= SlewSeconds && _pieces[^1].Velocity == 0.0;

    /// <summary>Duration of the slew, s.</summary>
    public double SlewSeconds { get; }

    /// <summary>Greatest planned speed, rad/s.</summary>
    public double PeakSpeed { get; }

    /// <summary>Position at a time not before that of the last call with the same cursor.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public double Position(double seconds, ref int cursor)
    {
        while (seconds >= _pieces[cursor].End)
        {
            cursor++;
        }

        ref readonly PlanPiece piece = ref _pieces[cursor];
        double s = seconds - piece.Start;
        return piece.Position + (s * (piece.Velocity + (s * (piece.HalfAcceleration + (s * piece.SixthJerk)))));
    }

    /// <summary>A piece by its place: that of a cursor, or <see cref="PieceAt"/> a time.</summary>
    public ref readonly PlanPiece Piece(int index) => ref _pieces[index];

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public double Position(double seconds)
    {
        int cursor = 0;
        return Position(seconds, ref cursor);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public double Velocity(double seconds)
    {
        int i = PieceAt(seconds);
        double s = seconds - _pieces[i].Start;
        return _pieces[i].Velocity + (s * ((2.0 * _pieces[i].HalfAcceleration) + (3.0 * s * _pieces[i].SixthJerk)));
    }

    public double Acceleration(double seconds)
    {
        int i = PieceAt(seconds);
        return (2.0 * _pieces[i].HalfAcceleration) + (6.0 * (seconds - _pieces[i].Start) * _pieces[i].SixthJerk);
    }

    /// <summary>Times at which the planned speed passes a threshold, each with whether it is above it afterwards; the first entry is the state at time 0.</summary>
    public IReadOnlyList<(double TimeSeconds, bool Above)> Crossings(double speed)
    {
        var crossings = new List<(double, bool)> { (0.0, Math.Abs(_pieces[0].Velocity) > speed) };
        for (int i = 0; i < _pieces.Length; i++)
        {
            bool before = crossings[^1].Item2;
            bool first = Math.Abs(_pieces[i].Velocity) > speed;
            if (first != before)
            {
                crossings.Add((_pieces[i].Start, first));
            }

            if (i + 1 < _pieces.Length && Math.Abs(VelocityAtEnd(i)) > speed != first)
            {
                crossings.Add((CrossingInside(i, speed, first), !first));
            }
        }

        return crossings;
    }

    private double CrossingInside(int piece, double speed, bool aboveAtStart)
    {
        double low = _pieces[piece].Start;
        double high = _pieces[piece + 1].Start;
        for (int k = 0; k < 60; k++)
        {
            double middle = 0.5 * (low + high);
            double s = middle - _pieces[piece].Start;
            bool above = Math.Abs(_pieces[piece].Velocity + (s * ((2.0 * _pieces[piece].HalfAcceleration) + (3.0 * s * _pieces[piece].SixthJerk)))) > speed;
            (low, high) = above == aboveAtStart ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public int PieceAt(double seconds)
    {
        int i = 0;
        while (i + 1 < _pieces.Length && seconds >= _pieces[i + 1].Start)
        {
            i++;
        }

        return i;
    }

    private double VelocityAtEnd(int piece)
    {
        if (piece + 1 >= _pieces.Length)
        {
            return _pieces[piece].Velocity;
        }

        double s = _pieces[piece + 1].Start - _pieces[piece].Start;
        return _pieces[piece].Velocity + (s * ((2.0 * _pieces[piece].HalfAcceleration) + (3.0 * s * _pieces[piece].SixthJerk)));
    }
}
