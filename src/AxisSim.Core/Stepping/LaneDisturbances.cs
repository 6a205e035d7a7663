using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

/// <summary>The other axis' motion and the wind at the ends of a block.</summary>
internal sealed class LaneDisturbances(MountSetup setup, MountAxis axis, MovePlan plan)
{
    private readonly MotorPlan _other = plan.At(axis.Other());
    private readonly double _slewEnd = plan.At(axis).SlewSeconds;
    // The end of one block is the start of the next.
    private Moment _last = new(double.NaN, 0.0, 0.0, 0.0, 0.0);
    private readonly WindTorque _wind = new(setup.Disturbances);

    /// <summary>What the disturbances at a time follow from, and until when they do, s.</summary>
    public LaneOtherAxis OtherAxis(double seconds, out double untilSeconds)
    {
        ref readonly PlanPiece piece = ref _other.Piece(_other.PieceAt(seconds));
        untilSeconds = piece.End;
        return new LaneOtherAxis { Piece = LaneSetup.Piece(piece), SlewEnd = _slewEnd };
    }

    /// <summary>What the first block begins with, as the end of a block before.</summary>
    public LaneDisturbance Start(in LaneTerms terms)
    {
        if (!terms.Outside && !terms.Inertia)
        {
            return default;
        }

        Moment start = At(0.0);
        return new LaneDisturbance { ToSin = start.Sin, ToCos = start.Cos, ToRateSquare = start.RateSquare, ToWind = start.Wind };
    }

    /// <summary>What makes the wind.</summary>
    public Disturbances Disturbances => setup.Disturbances;

    /// <summary>Torque of the wind at a time, N m.</summary>
    public double Wind(double seconds) => _wind.At(seconds);

    public LaneDisturbances Copy() => (LaneDisturbances)MemberwiseClone();

    /// <summary>Whether nothing changes from a time on.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public bool IsSteady(double seconds) => _other.RestsFrom(seconds) && _wind.IsSteady;

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    public LaneDisturbance Between(in LaneTerms terms, double fromSeconds, double toSeconds)
    {
        LaneDisturbance disturbance = default;
        disturbance.Slewing = Math.Clamp((_slewEnd - fromSeconds) / (toSeconds - fromSeconds), 0.0, 1.0);
        if (!terms.Outside && !terms.Inertia)
        {
            return disturbance;
        }

        Moment from = _last.Seconds == fromSeconds ? _last : At(fromSeconds);
        Moment to = At(toSeconds);
        (disturbance.FromSin, disturbance.FromCos, disturbance.FromRateSquare, disturbance.FromWind) = (from.Sin, from.Cos, from.RateSquare, from.Wind);
        (disturbance.ToSin, disturbance.ToCos, disturbance.ToRateSquare, disturbance.ToWind) = (to.Sin, to.Cos, to.RateSquare, to.Wind);
        _last = to;
        return disturbance;
    }

    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveOptimization)]
    private Moment At(double seconds)
    {
        LaneMath.SinCos(_other.Position(seconds), out double sin, out double cos);
        double rate = _other.Velocity(seconds);
        return new Moment(seconds, sin, cos, rate * rate, _wind.At(seconds));
    }

    private readonly record struct Moment(double Seconds, double Sin, double Cos, double RateSquare, double Wind);
}
