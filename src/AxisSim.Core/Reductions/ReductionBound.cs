namespace AxisSim.Core.Reductions;

/// <summary>What stands against a greater slew rate at a reduction.</summary>
public enum ReductionBound
{
    /// <summary>The supply voltage: with ten times the voltage the first rate that fails arrives.</summary>
    SupplyVoltage,

    /// <summary>Friction of bearings and seals, with the loss in the worm.</summary>
    Friction,

    /// <summary>Imbalance.</summary>
    Imbalance,

    /// <summary>Inertia of the load.</summary>
    Inertia,

    /// <summary>The clutch slips.</summary>
    Clutch,

    /// <summary>The torque would do by far, but the rotor swings out of step.</summary>
    Resonance,

    /// <summary>The same, and microstepping throughout cures it.</summary>
    FullStepping,

    /// <summary>No single change lets it arrive.</summary>
    Combined,

    /// <summary>The controller's greatest pulse rate.</summary>
    PulseRate,

    /// <summary>The move is too short for a greater rate with its ramp.</summary>
    MoveLength,

    /// <summary>No step is short enough for such speeds: not simulated.</summary>
    NotSimulated,
}
