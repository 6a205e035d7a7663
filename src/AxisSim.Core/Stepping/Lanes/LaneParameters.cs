using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Constants of one axis as the step wants them: SI but for angles and speeds, which are those of <see cref="LaneState"/>. Nothing but numbers, so that a lane is a column of them.</summary>
/// <remarks>
/// A kick is the change of a speed in one step per newton metre: full steps per step and N m for the rotor, rad per step and N m for other bodies; a torque "times its kick" is
/// the change of speed that it makes. Of the friction of a mesh, the even part is the mean of both directions of load, the odd part half their difference; that part goes with
/// the load, not against the motion. Used most comes first.
/// </remarks>
internal struct LaneParameters
{
    /// <summary>Km pi/24 times the rotor's kick, full steps per step and A: what is left over from the form of the field in <see cref="LaneStep{TShaft, TPayload, TPower, TPose}"/>.</summary>
    public V TorqueKick;
    /// <summary>Four times the detent torque times the kick, full steps per step.</summary>
    public V DetentKick;
    /// <summary>Viscous and plan damping: share of the rotor's speed that a step takes away.</summary>
    public V RotorDrag;
    /// <summary>Plan damping alone, likewise; what the planned rate gives back.</summary>
    public V PlanDrag;
    /// <summary>Amplitude of the sync probe times the kick, full steps per step.</summary>
    public V ProbeKick;
    /// <summary>Dry friction of the rotor times the kick, full steps per step.</summary>
    public V RotorCoulombKick;
    /// <summary>Even friction of the worm mesh on the rotor, full steps per step and N m at the axis.</summary>
    public V MeshFrictionKick;
    /// <summary>Odd friction, likewise.</summary>
    public V MeshFrictionOdd;
    /// <summary>Decay of the regulator over a step (<see cref="PhaseLaw"/>).</summary>
    public V RegulatorDecay;
    /// <summary>Its share s.</summary>
    public V RegulatorShare;
    /// <summary>Phase currents, A.</summary>
    public LaneLevels Levels;
    /// <summary>Stiffness of the worm mesh, N m/rad at the axis.</summary>
    public V MeshStiffness;
    /// <summary>Damping of the worm mesh, N m per (rad per step).</summary>
    public V MeshDamping;
    /// <summary>Half its backlash, rad at the axis.</summary>
    public V HalfBacklash;
    /// <summary>Damping torque that needs no spring torque, N m: infinite without backlash, where the damping is not limited; else 0.</summary>
    public V MeshFree;
    /// <summary>Torque at which the clutch slips, N m.</summary>
    public V Clutch;
    /// <summary>Kick of the axis, rad per step and N m.</summary>
    public V AxisKick;
    /// <summary>Viscous friction of the axis: share of its speed that a step takes away.</summary>
    public V AxisDrag;
    /// <summary>Dry friction of the axis times its kick, rad per step.</summary>
    public V AxisCoulombKick;
    /// <summary>Breakaway friction of the axis times its kick, rad per step.</summary>
    public V AxisBreakawayKick;

    // Where the parts are there.

    /// <summary>Turn of the worm shaft per full step of the rotor, rad.</summary>
    public V ShaftPerRotor;
    /// <summary>Stiffness of the stages, N m/rad at the worm shaft.</summary>
    public V StageStiffness;
    /// <summary>Their damping, N m per (rad per step).</summary>
    public V StageDamping;
    /// <summary>Half their backlash, rad at the worm shaft.</summary>
    public V StageHalfBacklash;
    /// <summary>As <see cref="MeshFree"/>, N m.</summary>
    public V StageFree;
    /// <summary>Torque of the stages on the rotor, full steps per step and N m at the worm shaft.</summary>
    public V StageKick;
    /// <summary>Even friction of the stages, likewise.</summary>
    public V StageFrictionKick;
    /// <summary>Odd friction of the stages, likewise.</summary>
    public V StageFrictionOdd;
    /// <summary>Kick of the worm shaft, rad per step and N m.</summary>
    public V ShaftKick;
    /// <summary>Even friction of the worm mesh on the worm shaft, rad per step and N m at the axis.</summary>
    public V ShaftFrictionKick;
    /// <summary>Odd friction, likewise.</summary>
    public V ShaftFrictionOdd;
    /// <summary>Kick of the flexible payload, rad per step and N m; 0 without one.</summary>
    public V PayloadKick;
    /// <summary>Stiffness of its spring, N m/rad.</summary>
    public V PayloadStiffness;
    /// <summary>Damping of its spring, N m per (rad per step).</summary>
    public V PayloadDamping;
    /// <summary>Share of the inertia, and of what acts from outside, that is on the spring.</summary>
    public V PayloadShare;
    /// <summary>Inductance of a phase, H.</summary>
    public V Inductance;
    /// <summary>Inverse of the step, 1/s.</summary>
    public V StepsPerSecond;
    /// <summary>Step, s.</summary>
    public V StepSeconds;
    /// <summary>Open-circuit voltage of the supply, V.</summary>
    public V SupplyVolts;
    /// <summary>Its inverse, 1/V.</summary>
    public V PerSupplyVolt;
    /// <summary>Resistance of supply and leads, ohm.</summary>
    public V SupplyResistance;
    /// <summary>Step over bus capacitance, s/F.</summary>
    public V BusPerStep;
    /// <summary>Its inverse, F/s.</summary>
    public V StepPerBus;
    /// <summary>Share of the bus' distance from rest that is left after a step; 0 with an ideal supply.</summary>
    public V BusDecay;
    /// <summary>Voltage above which braking energy is dumped, V.</summary>
    public V BrakeLimit;

    // For blocks of steps.

    /// <summary>Full steps of the rotor per rad.</summary>
    public V StepsPerRadian;
    /// <summary>Kick of the rotor, full steps per step and N m.</summary>
    public V RotorKick;
    /// <summary>Km pi/24 per speed: the back-EMF but for the form of the field, V per (full step per step).</summary>
    public V EmfConstant;
    /// <summary>Step over the regulator's time constant.</summary>
    public V RegulatorRate;
    /// <summary>Resistance of a phase at 20 degrees Celsius, ohm.</summary>
    public V ColdResistance;
    /// <summary>Relative growth of the resistance, 1/K; 0 leaves it as it is at 20 degrees Celsius.</summary>
    public V ResistanceGrowth;
    /// <summary>Thermal resistance from winding to ambient, K/W; 0 leaves heating out.</summary>
    public V ThermalResistance;
    /// <summary>Share of the winding's distance from its end temperature that is left after a block.</summary>
    public V ThermalDecay;
    /// <summary>Ambient temperature, degrees Celsius.</summary>
    public V Ambient;
    /// <summary>Worm angle at the axis, rad per full step of the rotor (rigid stages) or per rad of the worm shaft.</summary>
    public V WormPerNode;
    /// <summary>Torque on the rotor by the plain ratio, full steps per step and N m at the axis; 0 with elastic stages.</summary>
    public V NodeKick;

    // Gravity torque about the axis: (G0 + G1 cos o + G2 sin o) cos a + (G3 + G4 cos o + G5 sin o) sin a, a the axis' angle and o the other's.

    /// <summary>G0, N m.</summary>
    public V Gravity0;
    /// <summary>G1, N m.</summary>
    public V Gravity1;
    /// <summary>G2, N m.</summary>
    public V Gravity2;
    /// <summary>G3, N m.</summary>
    public V Gravity3;
    /// <summary>G4, N m.</summary>
    public V Gravity4;
    /// <summary>G5, N m.</summary>
    public V Gravity5;

    // Polar inertia over that at the start of the move: I0 + I1 cos o + I2 sin o + I3 cos 2o + I4 sin 2o.

    /// <summary>I0, a ratio.</summary>
    public V Inertia0;
    /// <summary>I1, a ratio.</summary>
    public V Inertia1;
    /// <summary>I2, a ratio.</summary>
    public V Inertia2;
    /// <summary>I3, a ratio.</summary>
    public V Inertia3;
    /// <summary>I4, a ratio.</summary>
    public V Inertia4;

    // Half the slope of the polar inertia with the declination d: T1 sin d + T2 cos d + T3 sin 2d + T4 cos 2d.

    /// <summary>T1, kg m2/rad.</summary>
    public V InertiaHalfSlope1;
    /// <summary>T2, kg m2/rad.</summary>
    public V InertiaHalfSlope2;
    /// <summary>T3, kg m2/rad.</summary>
    public V InertiaHalfSlope3;
    /// <summary>T4, kg m2/rad.</summary>
    public V InertiaHalfSlope4;
    /// <summary>Periodic error once per worm turn: amplitude, rad at the axis.</summary>
    public V ErrorFirst;
    /// <summary>Its phase, rad.</summary>
    public V ErrorFirstPhase;
    /// <summary>Periodic error twice per worm turn: amplitude, rad at the axis.</summary>
    public V ErrorSecond;
    /// <summary>Its phase, rad.</summary>
    public V ErrorSecondPhase;
    /// <summary>Runout of the wheel: amplitude, rad at the axis.</summary>
    public V ErrorRunout;
    /// <summary>Its phase, rad.</summary>
    public V ErrorRunoutPhase;
    /// <summary>Worm turns per axis turn.</summary>
    public V WormTurns;
}
