using V = double;

namespace AxisSim.Core.Stepping.Lanes;

/// <summary>Constants of one axis as the step wants them: SI but for angles and speeds, which are those of <see cref="LaneState"/>. Nothing but numbers, so that a lane is a column of them.</summary>
/// <remarks>A kick is the change of a speed (per step) in one step per newton metre; a torque "times its kick" is the change that it makes. Used most comes first.</remarks>
internal struct LaneParameters
{
    /// <summary>Km pi/24 times the rotor's kick: what is left over from the form of the field in <see cref="LaneStep{TShaft, TPayload, TPower, TPose}"/>.</summary>
    public V TorqueKick;

    /// <summary>Four times the detent torque times the kick.</summary>
    public V DetentKick;

    /// <summary>Viscous and plan damping per speed, times the kick.</summary>
    public V RotorDrag;

    /// <summary>Plan damping alone, likewise; what the planned rate gives back.</summary>
    public V PlanDrag;

    /// <summary>Amplitude of the sync probe times the kick.</summary>
    public V ProbeKick;

    /// <summary>Dry friction of the rotor times the kick.</summary>
    public V RotorCoulombKick;

    /// <summary>Friction of the mesh on the rotor per axis torque, mean of both directions, times the kick.</summary>
    public V RubKick;

    /// <summary>Half the difference of both directions, likewise: that part goes with the load, not against the motion.</summary>
    public V RubOdd;

    /// <summary>Decay of the regulator over a step, and its share: see <see cref="PhaseLaw"/>.</summary>
    public V RegulatorDecay;
    public V RegulatorShare;

    /// <summary>Phase currents before and after the fall, microstepping and full-stepping, A; the last is 1 for commands that hold amperes.</summary>
    public V SlewMicrostepping;
    public V SlewFullStepping;
    public V LaterMicrostepping;
    public V LaterFullStepping;
    public V Unity;
    public V MeshStiffness;

    /// <summary>Damping per twist in a step.</summary>
    public V MeshDamping;
    public V HalfBacklash;

    /// <summary>Infinite without backlash, where the damping is not limited; else 0.</summary>
    public V MeshFree;
    public V Clutch;
    public V AxisKick;
    public V AxisDrag;
    public V AxisCoulombKick;
    public V AxisBreakawayKick;

    // Where the parts are there.

    /// <summary>Rad of the worm shaft per full step of the rotor.</summary>
    public V ShaftPerRotor;
    public V StageStiffness;
    public V StageDamping;
    public V StageHalfBacklash;
    public V StageFree;

    /// <summary>Stage torque on the rotor per newton metre at the worm shaft, times the rotor's kick; then its friction as above.</summary>
    public V StageKick;
    public V StageRubKick;
    public V StageRubOdd;
    public V ShaftKick;
    public V ShaftRubKick;
    public V ShaftRubOdd;
    public V PayloadKick;
    public V PayloadStiffness;
    public V PayloadDamping;
    public V PayloadShare;
    public V Inductance;
    public V StepsPerSecond;
    public V StepSeconds;
    public V SupplyVolts;
    public V PerSupplyVolt;
    public V SupplyResistance;

    /// <summary>Step over bus capacitance, s/F; and its inverse.</summary>
    public V BusPerStep;
    public V StepPerBus;
    public V BusDecay;
    public V BrakeLimit;

    // For blocks of steps.

    /// <summary>Full steps of the rotor per rad.</summary>
    public V StepsPerRadian;
    public V RotorKick;

    /// <summary>Km pi/24 per speed: the back-EMF but for the form of the field, V.</summary>
    public V EmfConstant;

    /// <summary>Step over the regulator's time constant.</summary>
    public V RegulatorRate;
    public V ColdResistance;

    /// <summary>Relative growth of the resistance per kelvin; 0 leaves it as it is at 20 degrees Celsius.</summary>
    public V ResistanceGrowth;
    public V ThermalResistance;
    public V ThermalDecay;
    public V Ambient;

    /// <summary>Worm angle at the axis per full step of the rotor (rigid stages), or per rad of the worm shaft.</summary>
    public V WormPerNode;

    /// <summary>Torque on the rotor per axis torque by the plain ratio, times the kick; 0 with elastic stages.</summary>
    public V NodeKick;

    /// <summary>Gravity torque about the axis: (G0 + G1 cos o + G2 sin o) cos a + (G3 + G4 cos o + G5 sin o) sin a, o the other axis' angle.</summary>
    public V Gravity0;
    public V Gravity1;
    public V Gravity2;
    public V Gravity3;
    public V Gravity4;
    public V Gravity5;

    /// <summary>Polar inertia over its start: I0 + I1 cos o + I2 sin o + I3 cos 2o + I4 sin 2o.</summary>
    public V Inertia0;
    public V Inertia1;
    public V Inertia2;
    public V Inertia3;
    public V Inertia4;

    /// <summary>Half the slope of the polar inertia with the declination d: T1 sin d + T2 cos d + T3 sin 2d + T4 cos 2d.</summary>
    public V Throw1;
    public V Throw2;
    public V Throw3;
    public V Throw4;
    public V ErrorFirst;
    public V ErrorFirstPhase;
    public V ErrorSecond;
    public V ErrorSecondPhase;
    public V ErrorRunout;
    public V ErrorRunoutPhase;

    /// <summary>Worm turns per axis turn.</summary>
    public V WormTurns;
}
