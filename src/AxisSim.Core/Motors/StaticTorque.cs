namespace AxisSim.Core.Motors;

/// <summary>Torque of a two-phase stepper at rest against the lag of its rotor.</summary>
/// <remarks>
/// Phase currents a and b make a field that holds the rotor with <c>T = Tp sin(Nr lag)</c>, <c>Tp = Km sqrt(ia2 + ib2)</c>, Nr rotor teeth,
/// lag in rad of shaft angle; detent left out. So two phases on hold sqrt(2) times one phase, and microstepping holds 0.707 of the
/// datasheet's torque at the same peak current. Valid unsaturated.
/// </remarks>
public static class StaticTorque
{
    /// <summary>Greatest static torque <c>Tp</c> of two phase currents (A), N m.</summary>
    public static double Peak(StepperMotor motor, double currentA, double currentB)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return motor.TorqueConstantNewtonMetresPerAmpere * Math.Sqrt((currentA * currentA) + (currentB * currentB));
    }

    /// <summary>Torque that one microstep builds up, as a share of the greatest: <c>sin(90 degrees / microsteps)</c>.</summary>
    /// <remarks>A load friction above it holds the shaft still for a microstep or more.</remarks>
    public static double IncrementShare(int microstepsPerFullStep) => Math.Sin(Math.PI / 2.0 / microstepsPerFullStep);

    /// <summary>Frequency of small swings of the rotor about its lag zero, Hz: <c>sqrt(Nr Tp/J)/2 pi</c>.</summary>
    /// <param name="motor">Motor.</param>
    /// <param name="peakTorqueNewtonMetres">Tp, N m.</param>
    /// <param name="inertiaKilogramSquareMetres">J at the shaft, kg m2 (rotor and what turns rigidly with it).</param>
    public static double ResonanceHertz(StepperMotor motor, double peakTorqueNewtonMetres, double inertiaKilogramSquareMetres)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return Math.Sqrt(motor.RotorTeeth * peakTorqueNewtonMetres / inertiaKilogramSquareMetres) / (2.0 * Math.PI);
    }

    /// <summary>Damping at which such a swing just does not pass its rest any more, N m s/rad: <c>2 sqrt(J Nr Tp)</c>.</summary>
    /// <param name="motor">Motor.</param>
    /// <param name="peakTorqueNewtonMetres">Tp, N m.</param>
    /// <param name="inertiaKilogramSquareMetres">J at the shaft, kg m2.</param>
    public static double CriticalDamping(StepperMotor motor, double peakTorqueNewtonMetres, double inertiaKilogramSquareMetres)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return 2.0 * Math.Sqrt(inertiaKilogramSquareMetres * motor.RotorTeeth * peakTorqueNewtonMetres);
    }
}
