namespace AxisSim.Core.Reductions;

/// <summary>What follows in closed form at one reduction.</summary>
public sealed record ReductionFacts
{
    /// <summary>Total reduction, motor turns per axis turn.</summary>
    public required double TotalReduction { get; init; }

    /// <summary>Ratio of the stage before the worm; below one it steps up.</summary>
    public required double LastStageRatio { get; init; }

    /// <summary>A full step at the axis, rad.</summary>
    public required double FullStepRadians { get; init; }

    /// <summary>A microstep at the axis, rad.</summary>
    public required double MicrostepRadians { get; init; }

    /// <summary>How far the axis may rest off its command because friction holds it there, rad to either side; NaN when friction is more than the motor.</summary>
    public required double FrictionLagRadians { get; init; }

    /// <summary>Torque at the axis at low speed, N m.</summary>
    public required double TorqueAtRestNewtonMetres { get; init; }

    /// <summary>Torque at the axis at the scenario's slew rate, N m.</summary>
    public required double TorqueAtSlewNewtonMetres { get; init; }

    /// <summary>Torque that the axis asks for at that rate at the hardest place of the move, N m.</summary>
    public required double NeededAtSlewNewtonMetres { get; init; }

    /// <summary>Inertia of axis and worm shaft seen at the motor over the motor's own.</summary>
    public required double InertiaRatio { get; init; }

    /// <summary>Greatest acceleration with the margin asked for, rad/s2; zero where the motor does not carry the load.</summary>
    public required double AccelerationRadiansPerSecondSquared { get; init; }

    /// <summary>Greatest steady rate with the margin asked for, rad/s; zero where the motor does not carry the load.</summary>
    public required double RateRadiansPerSecond { get; init; }

    /// <summary>Greatest rate that the controller can pulse, rad/s; infinite when nothing limits it.</summary>
    public required double PulseLimitRadiansPerSecond { get; init; }

    /// <summary>Pulses per second at the scenario's slew rate.</summary>
    public required double PulsesPerSecond { get; init; }

    /// <summary>Motor speed at the scenario's slew rate, rad/s.</summary>
    public required double MotorSpeedRadiansPerSecond { get; init; }
}
