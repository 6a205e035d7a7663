using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>What comes from outside at both ends of a block: the other axis' angle and rate, and the wind.</summary>
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
}
