using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>A piece of a plan for each lane, the law of <see cref="Motion.PlanPiece"/>; in the same order of operations as <see cref="Motion.MotorPlan"/>, none of them fused.</summary>
internal struct LanePiece
{
    /// <summary>Start, s; the others in powers of s and rad.</summary>
    public V Start;
    public V Position;
    public V Velocity;
    public V HalfAcceleration;
    public V SixthJerk;

    /// <summary>Position at a time, rad.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly V PositionAt(double seconds)
    {
        V s = Op.Create(seconds) - Start;
        return Position + (s * (Velocity + (s * (HalfAcceleration + (s * SixthJerk)))));
    }

    /// <summary>Velocity at a time, rad/s.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly V VelocityAt(double seconds)
    {
        V s = Op.Create(seconds) - Start;
        return Velocity + (s * ((Op.Create(2.0) * HalfAcceleration) + (Op.Create(3.0) * s * SixthJerk)));
    }
}
