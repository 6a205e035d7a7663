using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>What is commanded over one step: unit phase currents in one part or in two, the planned rate, the sync probe.</summary>
internal struct LaneCommand
{
    public V FirstA;
    public V FirstB;

    /// <summary>Planned speed, full steps per step.</summary>
    public V PlanRate;

    /// <summary>Mean of the unit probe over the step.</summary>
    public V Probe;

    /// <summary>End of the first part as a share of the step.</summary>
    public V Split;
    public V SecondA;
    public V SecondB;

    // Decay of regulator and winding over both parts: see PhaseLaw.
    public V FirstRegulator;
    public V FirstRegulatorShare;
    public V FirstWinding;
    public V FirstWindingShare;
    public V SecondRegulator;
    public V SecondRegulatorShare;
    public V SecondWinding;
    public V SecondWindingShare;

    /// <summary>The same command in every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Spread(in AxisSim.Core.Lanes.LaneCommand one, bool split, bool parts)
    {
        FirstA = Op.Create(one.FirstA);
        FirstB = Op.Create(one.FirstB);
        PlanRate = Op.Create(one.PlanRate);
        Probe = Op.Create(one.Probe);
        if (split)
        {
            Split = Op.Create(one.Split);
            SecondA = Op.Create(one.SecondA);
            SecondB = Op.Create(one.SecondB);
            if (parts)
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
    }
}
