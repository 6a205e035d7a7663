using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What disturbs an axis at both ends of a block: the other axis' angle and rate, and the wind; and how far its own slew goes into the block.</summary>
internal struct LaneDisturbance
{
    /// <summary>Cosine of the other axis' angle at the start of the block.</summary>
    public V FromCos;
    /// <summary>Sine of it.</summary>
    public V FromSin;
    /// <summary>Square of the other axis' rate there, rad2/s2.</summary>
    public V FromRateSquare;
    /// <summary>Torque of the wind there, N m at the axis.</summary>
    public V FromWind;
    /// <summary>Cosine of the other axis' angle at the end of the block.</summary>
    public V ToCos;
    /// <summary>Sine of it.</summary>
    public V ToSin;
    /// <summary>Square of the other axis' rate there, rad2/s2.</summary>
    public V ToRateSquare;
    /// <summary>Torque of the wind there, N m at the axis.</summary>
    public V ToWind;
    /// <summary>Share of the block that lies in the axis' own slew.</summary>
    public V Slewing;

    /// <summary>The same in every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Spread(in AxisSim.Core.Stepping.Lanes.LaneDisturbance one)
    {
        FromCos = Op.Create(one.FromCos);
        FromSin = Op.Create(one.FromSin);
        FromRateSquare = Op.Create(one.FromRateSquare);
        FromWind = Op.Create(one.FromWind);
        ToCos = Op.Create(one.ToCos);
        ToSin = Op.Create(one.ToSin);
        ToRateSquare = Op.Create(one.ToRateSquare);
        ToWind = Op.Create(one.ToWind);
        Slewing = Op.Create(one.Slewing);
    }
}
