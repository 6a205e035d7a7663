using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What comes from outside at both ends of a block: the other axis' angle and rate, and the wind; and how far the axis' own slew goes into it.</summary>
internal struct LaneSky
{
    public V FromCos;
    public V FromSin;
    public V FromRateSquare;
    public V FromWind;
    public V ToCos;
    public V ToSin;
    public V ToRateSquare;
    public V ToWind;

    /// <summary>Share of the block that lies in the axis' own slew.</summary>
    public V Slewing;

    /// <summary>The same sky over every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Spread(in AxisSim.Core.Stepping.Lanes.LaneSky one)
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
