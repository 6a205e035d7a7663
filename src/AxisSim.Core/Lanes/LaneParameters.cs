using V = double;

namespace AxisSim.Core.Lanes;

/// <summary>Constants of one axis as the step wants them: SI, the rotor in electrical radians, step and inertia folded in. Nothing but numbers, so that a lane is a column of them.</summary>
internal struct LaneParameters
{
    /// <summary>Nr; electrical rad per rad of the rotor.</summary>
    public V Teeth;

    /// <summary>Km/Nr: back-EMF per electrical rad/s, V s.</summary>
    public V EmfConstant;

    /// <summary>h Nr/J: change of the rotor's electrical speed in a step per torque, 1/(N m s).</summary>
    public V RotorKick;

    /// <summary>Km times <see cref="RotorKick"/>.</summary>
    public V TorqueKick;

    /// <summary>Four times the detent torque times <see cref="RotorKick"/>.</summary>
    public V DetentKick;

    /// <summary>Viscous and plan damping per electrical speed, times the rotor's kick.</summary>
    public V RotorDrag;

    /// <summary>Plan damping alone, likewise; what the planned rate gives back.</summary>
    public V PlanDrag;

    /// <summary>Amplitude of the sync probe times the rotor's kick.</summary>
    public V ProbeKick;

    /// <summary>Dry friction of the rotor times its kick.</summary>
    public V RotorCoulombKick;

    /// <summary>Loss of the mesh on the rotor per torque on it, against the load and with it.</summary>
    public V RotorDriving;

    public V RotorBack;

    /// <summary>Regulator and winding over a whole step: see <see cref="PhaseLaw"/>.</summary>
    public V RegulatorDecay;

    public V RegulatorShare;

    /// <summary>h/tau of the regulator.</summary>
    public V RegulatorRate;

    public V StepSeconds;

    public V StepsPerSecond;

    public V ColdResistance;

    public V Inductance;

    public V SupplyVolts;

    public V PerSupplyVolt;

    public V SupplyResistance;

    /// <summary>Step over bus capacitance, s/F; and its inverse.</summary>
    public V BusPerStep;

    public V StepPerBus;

    public V BusDecay;

    public V BrakeLimit;

    public V ThermalResistance;

    public V ThermalDecay;

    public V Ambient;

    /// <summary>Relative growth of the resistance per kelvin; 0 leaves it as it is at 20 degrees Celsius.</summary>
    public V ResistanceGrowth;

    /// <summary>Phase currents before and after the fall, microstepping and full-stepping, A; the last is 1 for commands that hold amperes.</summary>
    public V SlewMicrostepping;

    public V SlewFullStepping;

    public V LaterMicrostepping;

    public V LaterFullStepping;

    public V Unity;

    /// <summary>Worm angle at the axis per electrical rad of the rotor (rigid stages), or per rad of the worm shaft.</summary>
    public V WormPerNode;

    public V MeshStiffness;

    public V MeshDamping;

    public V HalfBacklash;

    public V Clutch;

    public V AxisKick;

    public V AxisInertia;

    public V AxisViscous;

    public V AxisCoulomb;

    public V AxisBreakaway;

    /// <summary>Elastic stages: rad of the worm shaft per electrical rad of the rotor.</summary>
    public V ShaftPerRotor;

    public V StageStiffness;

    public V StageDamping;

    public V StageHalfBacklash;

    public V ShaftKick;

    public V ShaftDriving;

    public V ShaftBack;

    public V PayloadKick;

    public V PayloadInertia;

    public V PayloadStiffness;

    public V PayloadDamping;

    public V PayloadShare;

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

    /// <summary>Half the slope of the polar inertia with the declination: the same form without its constant.</summary>
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
