namespace AxisSim.Core.Questions;

/// <summary>What makes a move fail, or stands against a faster one: one list for every study.</summary>
public enum Limit
{
    /// <summary>The supply voltage: at this speed it cannot drive enough current; with ten times of it the move arrives.</summary>
    SupplyVoltage,

    /// <summary>Inertia: the ramp asks for more acceleration than the motor gives to this mass.</summary>
    Inertia,

    /// <summary>Imbalance.</summary>
    Imbalance,

    /// <summary>Friction of bearings and seals.</summary>
    Friction,

    /// <summary>The loss in worm and stages: no single load cures, but a train without loss does.</summary>
    TrainLoss,

    /// <summary>Wind.</summary>
    Wind,

    /// <summary>Several loads together: none of them, taken away alone, lets the move arrive.</summary>
    Combined,

    /// <summary>Swings of the rotor: the torque would do, but resonance or instability of stepping throws it out of step.</summary>
    Swings,

    /// <summary>The clutch slips.</summary>
    Clutch,

    /// <summary>The controller's greatest pulse rate.</summary>
    PulseRate,

    /// <summary>The move is too short for a faster slew with its ramp.</summary>
    MoveLength,

    /// <summary>Faster, the motor has hardly any torque left.</summary>
    MotorSpeed,

    /// <summary>The temperature of the winding.</summary>
    Temperature,

    /// <summary>The motion is too fast, or a figure too extreme, to be simulated.</summary>
    NotSimulated,
}
