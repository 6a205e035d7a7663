using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>State of one axis, as the step keeps it; then what holds for a block of steps, and readings of the last step.</summary>
/// <remarks>
/// Angles are those of the middle of the coming step, half a drift ahead, so that a whole drift is one addition; the rotor's in full steps (quarter turns of the
/// field), all others in rad. Speeds are angles per step of time. Each has with it the speed extrapolated to the middle of the coming step. Nothing but numbers, so that a lane is a column of them.
/// </remarks>
internal struct LaneState
{
    /// <summary>Angle of the rotor, full steps.</summary>
    public V Rotor;
    /// <summary>Speed of the rotor, full steps per step.</summary>
    public V RotorSpeed;
    /// <summary>The same in the middle of the coming step, full steps per step.</summary>
    public V RotorMidSpeed;
    /// <summary>Angle of the axis, rad.</summary>
    public V Axis;
    /// <summary>Speed of the axis, rad per step.</summary>
    public V AxisSpeed;
    /// <summary>The same in the middle of the coming step, rad per step.</summary>
    public V AxisMidSpeed;
    /// <summary>Angle by which the clutch has slipped, rad at the axis.</summary>
    public V Slip;
    /// <summary>Current of phase A at the end of the last step, A.</summary>
    public V CurrentA;
    /// <summary>Current of phase B at the end of the last step, A.</summary>
    public V CurrentB;

    // Of the block.

    /// <summary>What the back-EMF changes the current by in a step, A per unit of speed times the form of the field (<see cref="LaneStep{TShaft, TPayload, TPower, TPose}"/>).</summary>
    public V EmfKick;
    /// <summary>Share of a current that is left after a step without voltage.</summary>
    public V WindingDecay;
    /// <summary>Share s of the winding over a step (<see cref="PhaseLaw"/>).</summary>
    public V WindingShare;
    /// <summary>What the whole supply voltage changes the current by in a step, A.</summary>
    public V Reach;
    /// <summary>Torque of gravity, wind and the other axis' turning at the start of the block, N m at the axis.</summary>
    public V Torque;
    /// <summary>Its growth, N m per step.</summary>
    public V TorqueRate;
    /// <summary>Periodic error that does not go with the worm's angle, less the slip, at the start of the block, rad at the axis.</summary>
    public V Lead;
    /// <summary>Its growth, rad per step.</summary>
    public V LeadRate;
    /// <summary>Axis angle per worm angle with the slope of the periodic error: rad per full step of the rotor (rigid stages) or per rad of the worm shaft.</summary>
    public V Gear;
    /// <summary>Change of the rotor's speed by the mesh, with the odd part of its friction, full steps per step and N m at the axis; not used with elastic stages.</summary>
    public V LoadKick;

    // Where the parts are there.

    /// <summary>Angle of the worm shaft, rad.</summary>
    public V Shaft;
    /// <summary>Speed of the worm shaft, rad per step.</summary>
    public V ShaftSpeed;
    /// <summary>The same in the middle of the coming step, rad per step.</summary>
    public V ShaftMidSpeed;
    /// <summary>Angle of the flexible payload, rad.</summary>
    public V Payload;
    /// <summary>Speed of the flexible payload, rad per step.</summary>
    public V PayloadSpeed;
    /// <summary>The same in the middle of the coming step, rad per step.</summary>
    public V PayloadMidSpeed;
    /// <summary>Polar inertia over that at the start of the move, at the start of the block.</summary>
    public V Factor;
    /// <summary>Its growth, per step.</summary>
    public V FactorRate;
    /// <summary>Voltage of the bus, V.</summary>
    public V Volts;
    /// <summary>The same one step before, V.</summary>
    public V VoltsBefore;
    /// <summary>Temperature of the winding, degrees Celsius.</summary>
    public V Celsius;
    /// <summary>Resistance of a phase at that temperature, ohm.</summary>
    public V Resistance;
    /// <summary>Its inverse, S.</summary>
    public V Conductance;
    /// <summary>Current that a volt makes in a step from none, A/V.</summary>
    public V StepConductance;
    /// <summary>Copper loss of the block so far, J.</summary>
    public V CopperJoules;
    /// <summary>Copper loss over the slew as it would be at 20 degrees Celsius, J.</summary>
    public V SlewColdJoules;

    // Readings of the last step.

    /// <summary>Torque of the motor, detent included, times the rotor's kick, full steps per step.</summary>
    public V MotorKick;
    /// <summary>Torque of the worm mesh, N m at the axis.</summary>
    public V MeshTorque;
    /// <summary>Mean current of phase A, A.</summary>
    public V MeanA;
    /// <summary>Mean current of phase B, A.</summary>
    public V MeanB;
    /// <summary>Copper loss, W.</summary>
    public V Copper;
    /// <summary>Energy in the inductance of both phases at the end of the step, J.</summary>
    public V Stored;
    /// <summary>Power into both phases, W.</summary>
    public V Electrical;
    /// <summary>Current from the supply, A.</summary>
    public V SupplyAmperes;
    /// <summary>1 where the supply limits a current, else 0.</summary>
    public V Limited;
}
