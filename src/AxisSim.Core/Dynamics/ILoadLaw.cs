namespace AxisSim.Core.Dynamics;

/// <summary>What acts on rotor and axis from outside the drive train, and how the axis' inertia and the worm's error go.</summary>
/// <remarks>Implementations are structs, compiled into the step. Torques are positive towards greater angles.</remarks>
internal interface ILoadLaw
{
    /// <summary>Called before each block of steps with the state at its start.</summary>
    void BeginBlock(in AxisState state, double startSeconds, double blockSeconds);

    /// <summary>Torque on the rotor, mean over a step, N m.</summary>
    double RotorTorque(double startSeconds, double stepSeconds, double rotorRadians);

    /// <summary>Torque on the axis, N m.</summary>
    double AxisTorque(double midSeconds, double axisRadians);

    /// <summary>Torque on the flexible part of the payload, N m.</summary>
    double PayloadTorque(double midSeconds, double payloadRadians);

    /// <summary>Inertia of the axis over what it was at the start of the run (1 when it does not change).</summary>
    double InertiaFactor(double midSeconds);

    /// <summary>Rate of that factor, 1/s.</summary>
    double InertiaFactorRate { get; }

    /// <summary>Periodic error e at a worm angle p (rad at the axis), and its slope de/dp.</summary>
    (double Error, double Slope) PeriodicError(double midSeconds, double wormAxisRadians);
}

/// <summary>Nothing from outside.</summary>
internal readonly struct NoLoad : ILoadLaw
{
    public double InertiaFactorRate => 0.0;

    public void BeginBlock(in AxisState state, double startSeconds, double blockSeconds)
    {
    }

    public double RotorTorque(double startSeconds, double stepSeconds, double rotorRadians) => 0.0;

    public double AxisTorque(double midSeconds, double axisRadians) => 0.0;

    public double PayloadTorque(double midSeconds, double payloadRadians) => 0.0;

    public double InertiaFactor(double midSeconds) => 1.0;

    public (double Error, double Slope) PeriodicError(double midSeconds, double wormAxisRadians) => (0.0, 0.0);
}
