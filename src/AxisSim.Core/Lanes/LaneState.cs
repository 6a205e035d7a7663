using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>State of one axis. The rotor in electrical rad, all else in rad; each speed with that of one step before; then what holds for a block of steps, and readings of the last step.</summary>
internal struct LaneState
{
    public V Rotor;
    public V RotorSpeed;
    public V RotorSpeedBefore;
    public V Shaft;
    public V ShaftSpeed;
    public V ShaftSpeedBefore;
    public V Axis;
    public V AxisSpeed;
    public V AxisSpeedBefore;
    public V Slip;
    public V Payload;
    public V PayloadSpeed;
    public V PayloadSpeedBefore;
    public V CurrentA;
    public V CurrentB;
    public V Volts;
    public V VoltsBefore;
    public V Celsius;

    // Of the block.
    public V Resistance;
    public V Conductance;
    public V WindingDecay;
    public V WindingShare;
    public V CopperJoules;
    public V Torque;
    public V TorqueRate;
    public V ErrorBase;
    public V ErrorRate;
    public V Gear;
    public V Factor;
    public V FactorRate;

    // Of the last step.
    /// <summary>Motor torque times the rotor's kick.</summary>
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
