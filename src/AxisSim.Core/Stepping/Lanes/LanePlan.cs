using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>What the commands of an axis follow from as long as neither the piece of its plan nor the mode nor the current changes. Nothing but numbers, so that a lane is a column of them.</summary>
internal struct LanePlan
{
    /// <summary>Piece of the plan, rad of the shaft.</summary>
    public LanePiece Piece;

    /// <summary>Full steps of the rotor per rad.</summary>
    public V StepsPerRadian;

    /// <summary>Rotor teeth: electrical rad per rad.</summary>
    public V Teeth;

    /// <summary>1 while full-stepping, 0 while microstepping.</summary>
    public V FullStepping;

    /// <summary>Phase current in this mode, A.</summary>
    public V Level;

    /// <summary>Microsteps per electrical rad; rows of the table of microsteps, and one over them.</summary>
    public V CellsPerRadian;
    public V Cells;
    public V PerCell;

    /// <summary>End of the sync probe, s; minus infinity without one.</summary>
    public V ProbeEnd;

    /// <summary>1 where the planned rate pushes the rotor, else 0.</summary>
    public V Damped;
}
