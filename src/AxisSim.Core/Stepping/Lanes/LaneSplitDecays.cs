using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Decay of regulator and winding over both parts of a step in which the command changes, with their shares: see <see cref="PhaseLaw"/>.</summary>
internal struct LaneSplitDecays
{
    /// <summary>Decay of the regulator over the first part, a share.</summary>
    public V FirstRegulator;
    /// <summary>Its s, a share.</summary>
    public V FirstRegulatorShare;
    /// <summary>Decay of the winding's current over the first part, a share.</summary>
    public V FirstWinding;
    /// <summary>Its s, a share.</summary>
    public V FirstWindingShare;
    /// <summary>Decay of the regulator over the second part, a share.</summary>
    public V SecondRegulator;
    /// <summary>Its s, a share.</summary>
    public V SecondRegulatorShare;
    /// <summary>Decay of the winding's current over the second part, a share.</summary>
    public V SecondWinding;
    /// <summary>Its s, a share.</summary>
    public V SecondWindingShare;

    /// <summary>The same in every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Spread(in AxisSim.Core.Stepping.Lanes.LaneSplitDecays one)
    {
        FirstRegulator = Op.Create(one.FirstRegulator);
        FirstRegulatorShare = Op.Create(one.FirstRegulatorShare);
        FirstWinding = Op.Create(one.FirstWinding);
        FirstWindingShare = Op.Create(one.FirstWindingShare);
        SecondRegulator = Op.Create(one.SecondRegulator);
        SecondRegulatorShare = Op.Create(one.SecondRegulatorShare);
        SecondWinding = Op.Create(one.SecondWinding);
        SecondWindingShare = Op.Create(one.SecondWindingShare);
    }
}
