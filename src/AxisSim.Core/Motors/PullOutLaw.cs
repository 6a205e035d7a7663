namespace AxisSim.Core.Motors;

/// <summary>Closed forms of the pull-out torque of a two-phase stepper at steady speed.</summary>
/// <remarks>
/// <para>Symbols: Km torque constant per phase (N m/A), R resistance (ohm), L inductance (H), Nr rotor teeth, w shaft speed (rad/s), <c>X = Nr w L</c>,
/// <c>Z2 = R^2 + X^2</c>, V peak of the phase voltage's fundamental (V), I peak of the phase current's fundamental (A).</para>
/// <para>Voltage alone: <c>T = Km V/Z - Km^2 w R/Z2</c> (textbook synchronous-machine result, for example Acarnley, Stepping Motors, chapter 5).
/// Current alone: <c>T = Km I</c>. A chopper obeys both: the current phasor must lie in the disc of radius I about 0 and, for the voltage,
/// in the disc of radius V/Z about <c>-E (X, R)/Z2</c> with <c>E = Km w</c>; the torque is Km times its greatest quadrature part in the
/// intersection. A regulator whose current follows its command with the time constant tau passes only <c>1/sqrt(1 + (Nr w tau)^2)</c> of a sine (a first-order lag; its
/// phase lag only shifts the load angle), so on a drive the disc of the current shrinks by that. Detent torque averages out; the motor's own friction is subtracted.
/// Steady running only: no instability, no ripple.</para>
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

    /// <summary>Share of a commanded sine's amplitude that a lagging current regulator passes, <c>1/sqrt(1 + (Nr w tau)^2)</c>.</summary>
    /// <param name="teeth">Rotor teeth.</param>
    /// <param name="speed">Shaft speed, rad/s.</param>
    /// <param name="regulatorSeconds">Time constant of the regulator, s.</param>
    public static double RegulatorShare(double teeth, double speed, double regulatorSeconds)
    {
        double turn = teeth * speed * regulatorSeconds;
        return 1.0 / Math.Sqrt(1.0 + (turn * turn));
    }

    /// <summary>Pull-out torque of a microstepping drive whose regulator lags and whose bridge clips, N m at the rotor (friction not subtracted).</summary>
    /// <remarks>
    /// <para>The regulator asks for the phase voltage <c>u = R i + e + (L/tau)(i* - i)</c>, the bridge gives at most V, phase by phase. To its fundamental a clipped sine that is asked for r times
    /// as great as the bridge can give is a gain <c>g(r) = (2/pi)(asin(1/r) + sqrt(1 - 1/r^2)/r)</c>, 1 up to r = 1 (describing function of a saturation, for example Gelb and Vander Velde,
    /// Multiple-Input Describing Functions, 1968; from memory). With the command's phasor of size I at any angle the currents that fit a gain g lie on the circle about <c>(g - 1) e/D</c> with
    /// radius <c>g (L/tau) I/|D|</c>, <c>D = R + j X - g (R - L/tau)</c>, and, as the bridge then gives <c>g r V</c>, on that about <c>-e/(R + j X)</c> with radius <c>g r V/Z</c>.
    /// The torque is Km times the greatest quadrature part of a crossing, over all r. At r = 1 the first circle is that of the lagging current alone; a fast regulator
    /// asks for so much that the second becomes that of the square wave.</para>
    /// <para>Left out: the harmonics of the clipped voltage (2 % against a rotor that is held at its best lag, a test says).</para>
    /// </remarks>
    public static double UnderRegulator(double torqueConstant, double resistance, double inductance, double teeth, double peakAmperes, double regulatorSeconds, double supplyVolts, double speed)
    {
        double reactance = teeth * Math.Abs(speed) * inductance;
        double gain = inductance / regulatorSeconds;
        double emf = torqueConstant * Math.Abs(speed);
        double lagging = peakAmperes * RegulatorShare(teeth, speed, regulatorSeconds);
        double impedance = Hypot(resistance, reactance);

        // Not clipped: torque of the current alone, if its voltage is within reach.
        if (Hypot(emf + (resistance * lagging), reactance * lagging) <= supplyVolts)
        {
            return torqueConstant * lagging;
        }

        double At(double r)
        {
            double inverse = 1.0 / r;
            double g = 2.0 / Math.PI * (Math.Asin(inverse) + (inverse * Math.Sqrt(1.0 - (inverse * inverse))));
            double real = resistance - (g * (resistance - gain));
            double size = (real * real) + (reactance * reactance);

            // e = j E on the quadrature axis.
            double scale = (g - 1.0) * emf / size;
            return Crossing(
                scale * reactance, scale * real, g * gain * peakAmperes / Math.Sqrt(size),
                -emf * reactance / (impedance * impedance), -emf * resistance / (impedance * impedance), g * r * supplyVolts / impedance);
        }

        double most = Math.Max(2.0, (emf + ((resistance + (2.0 * gain)) * peakAmperes)) / supplyVolts);
        return torqueConstant * Math.Max(0.0, Greatest(At, most));
    }

    /// <summary>Pull-out torque of a motor on its chopper drive, net of the motor's own friction, N m; never below zero.</summary>
    /// <remarks>Microstepping by <see cref="UnderRegulator"/>; full-stepping, whose commands are square waves, by <see cref="UnderCurrentAndVoltage"/> with the fundamental of the current after the regulator's lag.</remarks>
    public static double OnDrive(StepperMotor motor, Drives.ChopperDrive drive, bool fullStepping, double supplyVolts, double speed)
    {
        double km = motor.TorqueConstantNewtonMetresPerAmpere;
        double gross = fullStepping
            ? UnderCurrentAndVoltage(
                km,
                motor.ResistanceOhms,
                motor.InductanceHenries,
                motor.RotorTeeth,
                SquareWaveFundamental * drive.FullStepCurrentFraction * drive.SlewCurrentAmperes * RegulatorShare(motor.RotorTeeth, speed, drive.RegulatorSeconds),
                SquareWaveFundamental * supplyVolts,
                speed)
            : UnderRegulator(km, motor.ResistanceOhms, motor.InductanceHenries, motor.RotorTeeth, drive.SlewCurrentAmperes, drive.RegulatorSeconds, supplyVolts, speed);
        return Math.Max(0.0, gross - motor.CoulombTorqueNewtonMetres - (motor.ViscousNewtonMetreSecondsPerRadian * Math.Abs(speed)));
    }

    /// <summary>Greatest value over how far the bridge clips, 1 to a most: a scan in equal steps of 1/r, then thirds.</summary>
    private static double Greatest(Func<double, double> at, double most)
    {
        const int Scan = 24;
        const int Thirds = 30;
        double least = 1.0 / most;
        double Share(int i) => 1.0 - ((1.0 - least) * i / Scan);
        int best = Enumerable.Range(0, Scan + 1).MaxBy(i => at(1.0 / Share(i)));
        double low = Share(Math.Min(Scan, best + 1));
        double high = Share(Math.Max(0, best - 1));
        for (int i = 0; i < Thirds; i++)
        {
            double first = low + ((high - low) / 3.0);
            double second = high - ((high - low) / 3.0);
            (low, high) = at(1.0 / first) > at(1.0 / second) ? (low, second) : (first, high);
        }

        return Math.Max(at(1.0 / low), at(1.0 / Share(best)));
    }

    /// <summary>Greater quadrature part of the points where two circles of the current plane cross; negative infinity where they do not.</summary>
    private static double Crossing(double d1, double q1, double radius1, double d2, double q2, double radius2)
    {
        double x = d2 - d1;
        double y = q2 - q1;
        double distance = Hypot(x, y);
        if (distance == 0.0)
        {
            return double.NegativeInfinity;
        }

        double along = ((radius1 * radius1) - (radius2 * radius2) + (distance * distance)) / (2.0 * distance);
        double square = (radius1 * radius1) - (along * along);
        return square < 0.0 ? double.NegativeInfinity : q1 + (((along * y) + (Math.Sqrt(square) * Math.Abs(x))) / distance);
    }

    private static double Hypot(double x, double y) => Math.Sqrt((x * x) + (y * y));
}
