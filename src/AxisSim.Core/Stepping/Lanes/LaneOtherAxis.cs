using System.Runtime.CompilerServices;
using AxisSim.Core.Numerics;
using AxisSim.Core.Stepping.Jobs;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What the disturbances of a lane follow from as long as the piece of the other axis' plan stays the same.</summary>
internal struct LaneOtherAxis
{
    /// <summary>Piece of the other axis' plan, rad of that axis.</summary>
    public LanePiece Piece;

    /// <summary>End of the axis' own slew, s.</summary>
    public V SlewEnd;

    /// <summary>Sets the disturbances of a block; what it ends with is what the next one begins with.</summary>
    /// <param name="disturbance">Disturbances of the block before, and then of this one.</param>
    /// <param name="terms">Slow terms.</param>
    /// <param name="from">Start of the block, s.</param>
    /// <param name="to">Its end, s.</param>
    /// <param name="wind">Torque of the wind at its end, N m.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public readonly void Advance(ref LaneDisturbance disturbance, in LaneTerms terms, double from, double to, V wind)
    {
        if (terms.Heat)
        {
            disturbance.Slewing = Op.MinNative(Op.MaxNative((SlewEnd - Op.Create(from)) / Op.Create(to - from), Op.Create(0.0)), Op.Create(1.0));
        }

        if (!terms.Outside && !terms.Inertia)
        {
            return;
        }

        (disturbance.FromSin, disturbance.FromCos, disturbance.FromRateSquare, disturbance.FromWind) = (disturbance.ToSin, disturbance.ToCos, disturbance.ToRateSquare, disturbance.ToWind);
        LaneMath.SinCos(Piece.PositionAt(to), out disturbance.ToSin, out disturbance.ToCos);
        V rate = Piece.VelocityAt(to);
        disturbance.ToRateSquare = rate * rate;
        disturbance.ToWind = wind;
    }
}
