using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>State of one axis, as the step keeps it; then what holds for a block of steps, and readings of the last step.</summary>
/// <remarks>
/// Angles are those of the middle of the coming step, half a drift ahead, so that a whole drift is one addition; the rotor's in full steps (quarter turns of the
/// field), all others in rad. Speeds are angles per step. Each has with it the speed extrapolated to the middle of the coming step.
/// </remarks>
internal struct LaneState
{
    public V Rotor;
    public V RotorSpeed;
    public V RotorMidSpeed;
    public V Axis;
    public V AxisSpeed;
    public V AxisMidSpeed;
    public V Slip;
    public V CurrentA;
    public V CurrentB;

    // Of the block.
    public V EmfKick;
    public V WindingDecay;
    public V WindingShare;
    public V Reach;
    public V Torque;
    public V TorqueRate;
    public V Lead;
    public V LeadRate;
    public V Gear;
    public V LoadKick;

    // Where the parts are there.
    public V Shaft;
    public V ShaftSpeed;
    public V ShaftMidSpeed;
    public V Payload;
    public V PayloadSpeed;
    public V PayloadMidSpeed;
    public V Factor;
    public V FactorRate;
    public V Volts;
    public V VoltsBefore;
    public V Celsius;
    public V Resistance;
    public V Conductance;
    public V StepConductance;
    public V CopperJoules;

    /// <summary>Copper loss over the slew as it would be at 20 degrees Celsius.</summary>
    public V SlewColdJoules;

    // Readings of the last step.
    public V MotorKick;
    public V MeshTorque;
    public V MeanA;
    public V MeanB;
    public V Copper;
    public V Stored;
    public V Electrical;
    public V SupplyAmperes;
    public V Limited;
}
