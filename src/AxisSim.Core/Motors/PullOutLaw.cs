namespace AxisSim.Core.Motors;

/// <summary>Closed forms of the pull-out torque of a two-phase stepper at steady speed.</summary>
/// <remarks>
/// <para>Symbols: Km torque constant per phase (N m/A), R resistance (ohm), L inductance (H), Nr rotor teeth, w shaft speed (rad/s), <c>X = Nr w L</c>,
/// <c>Z2 = R^2 + X^2</c>, V peak of the phase voltage's fundamental (V), I peak of the phase current's fundamental (A).</para>
/// <para>Voltage alone: <c>T = Km V/Z - Km^2 w R/Z2</c> (textbook synchronous-machine result, for example Acarnley, Stepping Motors, chapter 5).
/// Current alone: <c>T = Km I</c>. A chopper obeys both: the current phasor must lie in the disc of radius I about 0 and, for the voltage,
/// in the disc of radius V/Z about <c>-E (X, R)/Z2</c> with <c>E = Km w</c>; the torque is Km times its greatest quadrature part in the
/// intersection. Detent torque averages out; the motor's own friction is subtracted. Steady running only: no instability, no ripple.</para>
/// </remarks>
public static class PullOutLaw
{
    /// <summary>Fundamental of a square wave over its amplitude.</summary>
    public const double SquareWaveFundamental = 4.0 / Math.PI;

    /// <summary>Pull-out torque under sinusoidal phase voltages, N m at the rotor (friction not subtracted).</summary>
    public static double UnderVoltage(double torqueConstant, double resistance, double inductance, double teeth, double peakVolts, double speed)
    {
        double reactance = teeth * speed * inductance;
        double impedanceSquared = (resistance * resistance) + (reactance * reactance);
        return (torqueConstant * peakVolts / Math.Sqrt(impedanceSquared)) - (torqueConstant * torqueConstant * speed * resistance / impedanceSquared);
    }

    /// <summary>Torque at a load angle under sinusoidal voltage, N m: <c>d</c> is how far the rotor lags the voltage, electrical rad.</summary>
    public static double UnderVoltageAt(double torqueConstant, double resistance, double inductance, double teeth, double peakVolts, double speed, double lagRadians)
    {
        // Quadrature current of R i + X i rotated = V at the lag angle less the back-EMF on the quadrature axis.
        double reactance = teeth * speed * inductance;
        double impedanceSquared = (resistance * resistance) + (reactance * reactance);
        double direct = peakVolts * Math.Cos(lagRadians);
        double quadrature = (peakVolts * Math.Sin(lagRadians)) - (torqueConstant * speed);
        return torqueConstant * ((resistance * quadrature) - (reactance * direct)) / impedanceSquared;
    }

    /// <summary>Pull-out torque under a limit of current and one of voltage together, N m at the rotor (friction not subtracted).</summary>
    public static double UnderCurrentAndVoltage(double torqueConstant, double resistance, double inductance, double teeth, double peakAmperes, double peakVolts, double speed)
    {
        double reactance = teeth * Math.Abs(speed) * inductance;
        double impedanceSquared = (resistance * resistance) + (reactance * reactance);
        double emf = torqueConstant * Math.Abs(speed);
        double radius = peakVolts / Math.Sqrt(impedanceSquared);
        double centreD = -emf * reactance / impedanceSquared;
        double centreQ = -emf * resistance / impedanceSquared;

        // Top of the voltage disc, if the current allows it; top of the current disc, if the voltage allows it.
        if (Hypot(centreD, centreQ + radius) <= peakAmperes)
        {
            return torqueConstant * Math.Max(0.0, centreQ + radius);
        }

        if (Hypot(centreD, centreQ - peakAmperes) <= radius)
        {
            return torqueConstant * peakAmperes;
        }

        double distance = Hypot(centreD, centreQ);
        if (distance >= peakAmperes + radius || distance == 0.0)
        {
            return 0.0;
        }

        // Crossing of the two circles with the greater quadrature part.
        double along = ((peakAmperes * peakAmperes) - (radius * radius) + (distance * distance)) / (2.0 * distance);
        double across = Math.Sqrt(Math.Max(0.0, (peakAmperes * peakAmperes) - (along * along)));
        double crossing = ((along * centreQ) + (across * Math.Abs(centreD))) / distance;
        return torqueConstant * Math.Max(0.0, crossing);
    }

    /// <summary>Pull-out torque of a motor on its chopper drive, net of the motor's own friction, N m; never below zero.</summary>
    public static double OnDrive(StepperMotor motor, Drives.ChopperDrive drive, bool fullStepping, double supplyVolts, double speed)
    {
        // Microstepping is sinusoidal until the bridge saturates; the fundamental of a saturated bridge is that of a square wave.
        double amperes = drive.SlewCurrentAmperes * (fullStepping ? SquareWaveFundamental * drive.FullStepCurrentFraction : 1.0);
        double gross = UnderCurrentAndVoltage(
            motor.TorqueConstantNewtonMetresPerAmpere,
            motor.ResistanceOhms,
            motor.InductanceHenries,
            motor.RotorTeeth,
            amperes,
            SquareWaveFundamental * supplyVolts,
            speed);
        return Math.Max(0.0, gross - motor.CoulombTorqueNewtonMetres - (motor.ViscousNewtonMetreSecondsPerRadian * Math.Abs(speed)));
    }

    private static double Hypot(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
