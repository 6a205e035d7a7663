using System.Runtime.CompilerServices;
using Op = AxisSim.Core.Numerics.ScalarOps;
using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What is commanded over one step: unit phase currents in one part or in two, the planned rate, the sync probe.</summary>
internal struct LaneCommand
{
    /// <summary>Current of phase A in the first part, in units of the level that holds (A where that is <see cref="Jobs.LaneLevel.Unity"/>).</summary>
    public V FirstA;
    /// <summary>Current of phase B in the first part, likewise.</summary>
    public V FirstB;
    /// <summary>Planned speed, full steps per step.</summary>
    public V PlanRate;
    /// <summary>Mean of the unit probe over the step, -1 to 1.</summary>
    public V Probe;
    /// <summary>End of the first part as a share of the step; 1 where there is one part only.</summary>
    public V Split;
    /// <summary>Current of phase A in the second part, as in the first.</summary>
    public V SecondA;
    /// <summary>Current of phase B in the second part, likewise.</summary>
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
