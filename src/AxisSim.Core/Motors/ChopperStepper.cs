using System.Runtime.CompilerServices;
using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>A two-phase stepper on a current-regulating chopper drive, cycle-averaged.</summary>
/// <remarks>
/// State: both phase currents, the bus voltage, the winding's temperature. See <see cref="TwoPhaseLaw"/> for back-EMF and torque,
/// <see cref="PhaseCircuit"/> for the currents, <see cref="PhaseCommand"/> for what is commanded.
/// The chopper's ripple is averaged out, so the ripple torque at the chopping frequency (far above any mechanical mode) is left out.
/// </remarks>
internal struct ChopperStepper : IMotorLaw
{
    private readonly TwoPhaseLaw _law;
    private readonly double _inductance;
    private readonly double _regulator;
    private readonly double _step;
    private readonly double _coldResistance;
    private readonly WindingHeat _heat;
    private PhaseCommand _command;
    private SupplyBus _bus;
    private double _resistance;
    private double _conductance;
    private PhaseDecay _decay;
    private double _currentA;
    private double _currentB;
    private double _blockJoules;
    private readonly double _perStep;
    private double _meanA;
    private double _meanB;
    private double _electrical;
    private double _copper;
    private double _stored;
    private bool _saturated;

    public ChopperStepper(StepperMotor motor, ChopperDrive drive, PhaseCommand command, WindingHeat heat, double stepSeconds)
    {
        _law = new TwoPhaseLaw(motor.RotorTeeth, motor.TorqueConstantNewtonMetresPerAmpere, motor.DetentTorqueNewtonMetres);
        _inductance = motor.InductanceHenries;
        _regulator = drive.RegulatorSeconds;
        _step = stepSeconds;
        _perStep = 1.0 / stepSeconds;
        _coldResistance = motor.ResistanceOhms;
        _heat = heat;
        _command = command;
        _bus = new SupplyBus(drive, stepSeconds);
        Celsius = heat.AmbientCelsius;
        SetResistance();
    }

    /// <summary>Winding temperature, degrees Celsius.</summary>
    public double Celsius { get; private set; }

    public readonly MotorReading Reading =>
        new(_meanA, _meanB, _electrical, _copper, _stored, _bus.Volts, _bus.SupplyAmperes, _saturated);

    public readonly bool FullStepping => _command.FullStepping;

    public readonly bool IsFinite => double.IsFinite(_currentA + _currentB + _bus.Volts + Celsius);

    public readonly (double A, double B) Currents => (_currentA, _currentB);

    /// <summary>Drops all changes of mode and current that are still to come.</summary>
    public void IgnoreEvents() => _command.IgnoreEvents();

    /// <summary>Sets both phase currents, A (an initial condition).</summary>
    public void SetCurrents(double a, double b)
    {
        (_currentA, _currentB) = (a, b);
        _stored = 0.5 * _inductance * ((a * a) + (b * b));
    }

    // Compiled for speed at the first call: a slew is over before the runtime would get to it by itself.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Advance(in StepContext step, double rotorMidRadians, double speedMidRadiansPerSecond)
    {
        TwoPhaseLaw.Instant at = _law.At(rotorMidRadians, speedMidRadiansPerSecond, step.StepSeconds);
        double emfA = _law.BackEmfA(at);
        double emfB = _law.BackEmfB(at);
        double volts = _bus.MidVolts;
        double startA = _currentA;
        double startB = _currentB;
        PhaseTargets targets = _command.Over(step);
        PhaseCurrent a;
        PhaseCurrent b;
        if (targets.Split >= 1.0)
        {
            a = PhaseCircuit.Regulated(_decay, startA, targets.FirstA, emfA, _conductance, volts);
            b = PhaseCircuit.Regulated(_decay, startB, targets.FirstB, emfB, _conductance, volts);
        }
        else
        {
            // Back-EMF at the middle of each part: its rate is -Nr w eb for phase A and Nr w ea for phase B.
            double f = targets.Split;
            double early = -0.5 * (1.0 - f) * at.Sweep;
            double late = 0.5 * f * at.Sweep;
            PhaseDecay first = PhaseDecay.Over(f * step.StepSeconds, _regulator, _inductance * _conductance);
            PhaseDecay second = _decay.After(first, (1.0 - f) * step.StepSeconds, _regulator, _inductance * _conductance);
            a = InTwo(first, second, f, startA, targets.FirstA, targets.SecondA, emfA - (early * emfB), emfA - (late * emfB), volts);
            b = InTwo(first, second, f, startB, targets.FirstB, targets.SecondB, emfB + (early * emfA), emfB + (late * emfA), volts);
        }

        _currentA = a.End;
        _currentB = b.End;
        double changeA = a.End - startA;
        double changeB = b.End - startB;
        double torque = _law.CurrentTorque(at, a.Mean, b.Mean, changeA, changeB);
        double square = (a.Mean * a.Mean) + (b.Mean * b.Mean) + (((changeA * changeA) + (changeB * changeB)) * (1.0 / 12.0));
        double copper = _resistance * square;
        double stored = 0.5 * _inductance * ((a.End * a.End) + (b.End * b.End));
        double electrical = copper + (torque * speedMidRadiansPerSecond) + ((stored - _stored) * _perStep);
        _bus.Take(electrical, step.StepSeconds);
        _blockJoules += copper * step.StepSeconds;
        (_meanA, _meanB, _electrical, _copper, _stored, _saturated) = (a.Mean, b.Mean, electrical, copper, stored, a.Saturated || b.Saturated);
        return torque + _law.DetentTorque(at);
    }

    public void EndBlock(double blockSeconds)
    {
        Celsius = _heat.After(Celsius, _blockJoules / blockSeconds, blockSeconds);
        _blockJoules = 0.0;
        SetResistance();
    }

    private readonly PhaseCurrent InTwo(
        in PhaseDecay first,
        in PhaseDecay second,
        double split,
        double start,
        double target,
        double nextTarget,
        double emf,
        double nextEmf,
        double volts)
    {
        PhaseCurrent one = PhaseCircuit.Regulated(first, start, target, emf, _conductance, volts);
        PhaseCurrent two = PhaseCircuit.Regulated(second, one.End, nextTarget, nextEmf, _conductance, volts);
        return new PhaseCurrent(two.End, (split * one.Mean) + ((1.0 - split) * two.Mean), one.Saturated || two.Saturated);
    }

    private void SetResistance()
    {
        double resistance = _heat.Resistance(_coldResistance, Celsius);
        if (resistance == _resistance)
        {
            return;
        }

        _resistance = resistance;
        _conductance = 1.0 / _resistance;
        _decay = PhaseDecay.Over(_step, _regulator, _inductance * _conductance);
    }
}
