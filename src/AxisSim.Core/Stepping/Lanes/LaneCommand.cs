using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

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

    /// <summary>The same command in every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Spread(in AxisSim.Core.Stepping.Lanes.LaneCommand one, bool split)
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
        }
    }
}
