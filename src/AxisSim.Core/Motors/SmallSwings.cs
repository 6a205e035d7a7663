using System.Numerics;
using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>Whether small swings about steady running of a two-phase stepper decay or grow: its equations linearised in the frame that turns with the rotor.</summary>
/// <remarks>
/// <para>Symbols: Nr rotor teeth, Km torque constant (N m/A), R resistance (ohm), L inductance (H), J inertia at the shaft (kg m2), B viscous drag and D damping
/// against the commanded speed (N m s/rad), T load torque against the motion (N m), w shaft speed (rad/s), w0 the commanded one, <c>X = Nr w0 L</c>, p by how much the
/// command leads the rotor (electrical rad). Currents and voltages as complex numbers: the phases a + j b, turned back by the rotor's electrical angle, so that the
/// imaginary part of the current makes the torque.</para>
/// <para><c>L di/dt = v - (R + j Nr w L) i - j Km w</c>, <c>J dw/dt = Km Im(i) - B w - D (w - w0) - T</c>, <c>dp/dt = Nr (w0 - w)</c>. Under sinusoidal voltage
/// <c>v = V exp(j p)</c> growth and frequency are real and imaginary part of an eigenvalue of the Jacobian at the steady state.</para>
/// <para>Under a chopper each phase has <c>v = clamp(R i + e + (L/tau)(i* - i), -Vs, Vs)</c>, and steady running repeats from full step to full step, turned on by a quarter
/// turn: growth and frequency follow from the eigenvalues of what one step makes of small deviations (<see cref="RunningStep"/>). Where the clamp never acts, the current
/// follows its command whatever the rotor does, and the windings damp nothing: <c>-(B + D)/2J</c>. Where it acts for part of a step, the swing moves the instants of
/// switching, which damps strongly. Where full-stepping never reaches its current, the motor is fed with a square wave, and behaves as under the voltage <c>4 Vs/pi</c>.</para>
/// <para>Slow swings under voltage are damped by the windings with <c>Km^2 R (R^2 - X^2)/(R^2 + X^2)^2</c>, at any load and voltage: negative above <c>Nr w = R/L</c>,
/// worst at <c>sqrt(3) R/L</c>. That the instability lies about R/L is the common result of many analyses (Acarnley, <i>Stepping Motors</i>, 5.5, read); that the resistance
/// of the armature makes the damping of a synchronous machine negative is older still (Nickle and Pierce, <i>Stability of synchronous machines: effect of armature circuit
/// resistance</i>, 1930, abstract read). Hughes and Lawrenson, <i>Electromagnetic damping in stepping motors</i> (1975) and Lawrenson and Kingham, <i>Resonance effects in
/// stepping motors</i> (1977) treat it for stepping motors (titles from memory; the formula is derived from the equations above, not read there).</para>
/// <para>Valid: small swings, iron not saturated, supply without sag, a load that is soft
/// against the field: give the inertia of rotor and train alone. Microsteps are taken as fine. Speeds at which steps meet the swing (the low-speed resonance) are
/// another matter where nothing grows: there the steps drive the swing.</para>
/// </remarks>
public static class SmallSwings
{
    private const int Points = 160;

    /// <summary>Least rate of steps looked at over the frequency of the rotor on its field.</summary>
    private const double SlowestSteps = 0.4;

    /// <summary>Share of the closed form of the pull-out torque below which a load must leave steady running.</summary>
    private const double CarriedShare = 0.7;

    private const double EdgeShare = 1e-3;

    /// <summary>Damping by the windings of swings that are slow against R/L and Nr w, under sinusoidal voltage, N m s/rad; negative where it drives them.</summary>
    /// <param name="motor">Motor.</param>
    /// <param name="speed">Shaft speed, rad/s.</param>
    public static double SlowDamping(StepperMotor motor, double speed)
    {
        ArgumentNullException.ThrowIfNull(motor);
        double constant = motor.TorqueConstantNewtonMetresPerAmpere, r = motor.ResistanceOhms, x = motor.RotorTeeth * speed * motor.InductanceHenries;
        double z = (r * r) + (x * x);
        return constant * constant * r * ((r * r) - (x * x)) / (z * z);
    }

    /// <summary>Damping by the windings of swings at standstill, where a voltage holds the current, N m s/rad: <c>Km^2 R/(R^2 + (s L)^2)</c>, s the swing in rad/s.</summary>
    /// <param name="motor">Motor.</param>
    /// <param name="swingRadiansPerSecond">s, rad/s.</param>
    public static double StandstillDamping(StepperMotor motor, double swingRadiansPerSecond)
    {
        ArgumentNullException.ThrowIfNull(motor);
        double constant = motor.TorqueConstantNewtonMetresPerAmpere, r = motor.ResistanceOhms, x = swingRadiansPerSecond * motor.InductanceHenries;
        return constant * constant * r / ((r * r) + (x * x));
    }

    /// <summary>The swing under sinusoidal phase voltage; null above the pull-out torque, where there is no steady running.</summary>
    /// <param name="motor">Motor; its viscous drag and dry friction count as load.</param>
    /// <param name="peakVolts">Peak of the phase voltage, V.</param>
    /// <param name="inertia">J, kg m2.</param>
    /// <param name="damping">D, N m s/rad.</param>
    /// <param name="speed">w0, rad/s, above 0.</param>
    /// <param name="loadTorque">T, N m.</param>
    public static SmallSwing? UnderVoltage(StepperMotor motor, double peakVolts, double inertia, double damping, double speed, double loadTorque)
    {
        ArgumentNullException.ThrowIfNull(motor);
        var machine = new SwingMachine(motor, inertia, damping, speed, loadTorque);
        if (machine.DirectCurrent(peakVolts) is not { } direct)
        {
            return null;
        }

        return machine.Swing(new Complex(direct, machine.Quadrature));
    }

    /// <summary>The swing on a chopper drive; null above the pull-out torque.</summary>
    /// <param name="motor">Motor; its viscous drag and dry friction count as load.</param>
    /// <param name="drive">Drive: supply voltage, slew current, time constant of the regulator, full-step share.</param>
    /// <param name="fullStepping">Whether it full-steps: then I is <c>4/pi</c> of the full-step current.</param>
    /// <param name="inertia">J, kg m2.</param>
    /// <param name="damping">D, N m s/rad.</param>
    /// <param name="speed">w0, rad/s, above 0.</param>
    /// <param name="loadTorque">T, N m.</param>
    public static SmallSwing? OnDrive(StepperMotor motor, ChopperDrive drive, bool fullStepping, double inertia, double damping, double speed, double loadTorque)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(drive);
        return new RunningStep(motor, drive, fullStepping, inertia, damping, speed, loadTorque).Swing();
    }

    /// <summary>Speeds that are close enough together for <see cref="Bands"/>: 160 in equal ratios up to a greatest one, from where a step takes two and a half swings.</summary>
    /// <remarks>Slower steps ring out one by one. Empty when the greatest speed is slower than that.</remarks>
    /// <param name="motor">Motor.</param>
    /// <param name="drive">Drive.</param>
    /// <param name="inertia">J, kg m2.</param>
    /// <param name="topSpeed">The greatest speed, rad/s.</param>
    public static IReadOnlyList<double> Speeds(StepperMotor motor, ChopperDrive drive, double inertia, double topSpeed)
    {
        double least = SlowestSpeed(motor, drive, inertia);
        return topSpeed <= least ? [] : [.. Enumerable.Range(0, Points).Select(i => least * Math.Pow(topSpeed / least, i / (Points - 1.0)))];
    }

    /// <summary>The bands of speed in which small swings grow on a chopper drive, in ascending order.</summary>
    /// <remarks>
    /// A speed belongs to a band when swings grow under any of the loads. A band that is narrower than the distance of two neighbouring speeds may be missed; edges are found
    /// to a thousandth. Speeds at which a step takes longer than two and a half swings are passed over. Speeds belong to a band, too, at which no running is found that
    /// repeats from step to step although the load is well below the closed form of the pull-out torque: in the low-speed resonance full steps swing the rotor too far for
    /// that. A frequency of half the rate of steps, or one and a half of it, tells that the steps themselves drive the swing; another one, that the windings do.
    /// </remarks>
    /// <param name="motor">Motor.</param>
    /// <param name="drive">Drive.</param>
    /// <param name="fullStepping">Whether it full-steps.</param>
    /// <param name="inertia">J, kg m2: rotor and train, without the load behind a soft mesh.</param>
    /// <param name="damping">D, N m s/rad.</param>
    /// <param name="speeds">The speeds looked at, rad/s, ascending.</param>
    /// <param name="loadTorques">Loads T at a speed, N m; where the motor cannot carry one, there are no swings to tell of. None is a load of zero.</param>
    public static IReadOnlyList<SwingBand> Bands(
        StepperMotor motor, ChopperDrive drive, bool fullStepping, double inertia, double damping, IReadOnlyList<double> speeds, params IReadOnlyList<Func<double, double>> loadTorques)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(loadTorques);
        SwingAt Under(double speed, double load)
        {
            double most = PullOutLaw.OnDrive(motor, drive, fullStepping, drive.SupplyVolts, speed);
            SmallSwing? swing = load < most ? OnDrive(motor, drive, fullStepping, inertia, damping, speed, load) : null;
            return new SwingAt(speed, swing, swing is { } found ? found.GrowthPerSecond > 0.0 : load < CarriedShare * most);
        }

        SwingAt At(double speed) => loadTorques.Count == 0 ? Under(speed, 0.0) : loadTorques.Select(load => Under(speed, load(speed))).MaxBy(look => (look.Grows, look.Growth));
        double least = SlowestSpeed(motor, drive, inertia);
        double[] tried = [.. speeds.Where(speed => speed >= least)];
        var looks = new SwingAt[tried.Length];
        Parallel.For(0, tried.Length, i => looks[i] = At(tried[i]));
        var bands = new List<SwingBand>();
        for (int first = 0; first < looks.Length; first++)
        {
            if (!looks[first].Grows)
            {
                continue;
            }

            int last = first;
            while (last + 1 < looks.Length && looks[last + 1].Grows)
            {
                last++;
            }

            SwingAt worst = looks[first..(last + 1)].MaxBy(look => look.Growth);
            double from = first == 0 ? tried[0] : Edge(tried[first - 1], tried[first], speed => At(speed).Grows);
            double to = last + 1 == looks.Length ? tried[last] : Edge(tried[last + 1], tried[last], speed => At(speed).Grows);
            bands.Add(new SwingBand(from, to, worst.Speed, worst.Swing));
            first = last;
        }

        return bands;
    }

    private static double SlowestSpeed(StepperMotor motor, ChopperDrive drive, double inertia)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(drive);
        return SlowestSteps * motor.FullStepRadians * StaticTorque.ResonanceHertz(motor, StaticTorque.Peak(motor, drive.SlewCurrentAmperes, 0.0), inertia);
    }

    /// <summary>Where growth begins between a speed without and one with it.</summary>
    private static double Edge(double without, double with, Func<double, bool> grows)
    {
        while (Math.Abs(with - without) > EdgeShare * with)
        {
            double middle = 0.5 * (without + with);
            (without, with) = grows(middle) ? (without, middle) : (middle, with);
        }

        return with;
    }

    private readonly record struct SwingAt(double Speed, SmallSwing? Swing, bool Grows)
    {
        public double Growth => Swing?.GrowthPerSecond ?? double.NegativeInfinity;
    }
}
