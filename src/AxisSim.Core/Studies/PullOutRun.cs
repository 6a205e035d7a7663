using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Studies;

/// <summary>Load torque on a rotor that opposes its motion and grows from one time on.</summary>
internal struct RampLoad(double fromSeconds, double start, double slope, SyncProbe probe) : ILoadLaw
{
    public readonly double InertiaFactorRate => 0.0;

    public readonly void BeginBlock(in AxisState state, double startSeconds, double blockSeconds)
    {
    }

    /// <summary>The load torque at a time, N m; it comes on over 50 ms, for a sudden load would read low.</summary>
    public readonly double Load(double seconds)
    {
        double s = seconds - fromSeconds;
        return s <= 0.0 ? 0.0 : (start * Math.Min(1.0, s / 0.05)) + (slope * Math.Max(0.0, s - 0.05));
    }

    public readonly double RotorTorque(double startSeconds, double stepSeconds, double rotorRadians) =>
        probe.Mean(startSeconds, stepSeconds) - Load(startSeconds + (0.5 * stepSeconds));

    public readonly double AxisTorque(double midSeconds, double axisRadians) => 0.0;

    public readonly double PayloadTorque(double midSeconds, double payloadRadians) => 0.0;

    public readonly double InertiaFactor(double midSeconds) => 1.0;

    public readonly (double Error, double Slope) PeriodicError(double midSeconds, double wormAxisRadians) => (0.0, 0.0);
}

/// <summary>Pull-out torque by simulation: the motor with the load's inertia runs up to a speed, then a torque grows until sync is lost.</summary>
/// <remarks>
/// The run-up is microstepped and gentle (a running start without load angle, or a step of load, would lose sync too early). The mode asked for begins at speed.
/// A first, fast ramp finds the torque roughly; a second, slow one starts below it. The sync probe acts throughout.
/// </remarks>
internal sealed class PullOutRun
{
    private readonly StepperMotor _motor;
    private readonly ChopperDrive _drive;
    private readonly double _inertia;
    private readonly double _damping;
    private readonly double _closedForm;
    private readonly double _speed;
    private readonly bool _fullStepping;
    private readonly double _runUp;

    public PullOutRun(StepperMotor motor, ChopperDrive drive, double inertia, double damping, double speed, bool fullStepping)
    {
        _motor = motor;
        _drive = drive;
        _inertia = inertia;
        _damping = damping;
        _speed = speed;
        _fullStepping = fullStepping;
        _closedForm = PullOutLaw.OnDrive(motor, drive, fullStepping, drive.SupplyVolts, speed);
        double gentle = 0.2 * Math.Max(PullOutLaw.OnDrive(motor, drive, false, drive.SupplyVolts, speed), 0.02 * motor.HoldingTorqueNewtonMetres);
        _runUp = Math.Clamp(inertia * speed / gentle, 0.1, 3.0);
    }

    /// <summary>Pull-out torque, N m; 0 when the motor does not even run free at this speed.</summary>
    public double Torque()
    {
        double peak = Math.Max(_closedForm, 0.02 * _motor.HoldingTorqueNewtonMetres);
        double rough = UntilLost(0.0, 4.0 * peak, 1.5 * peak);
        if (rough <= 0.0)
        {
            return 0.0;
        }

        // Twenty full steps or more pass while the load grows, so that it meets the weakest of them.
        double start = 0.85 * rough;
        double growth = (0.15 * rough) + (0.3 * peak);
        double seconds = Math.Clamp(20.0 * _motor.FullStepRadians / _speed, 0.75, 3.0);
        double fine = UntilLost(start, growth / seconds, start + growth);
        return fine > 0.0 ? fine : rough;
    }

    /// <summary>Load at which sync is lost, N m; 0 when it is lost before the load begins.</summary>
    private double UntilLost(double start, double slope, double most)
    {
        double step = StepChoice.For(StepChoice.DefaultSeconds, _motor.RotorTeeth, _speed, Fastest()).StepSeconds;
        double switchTime = _runUp + 0.02;
        double loadFrom = switchTime + 0.05;
        double end = loadFrom + 0.05 + Math.Max(0.0, (most - start) / slope);
        var profile = new RunUp(_speed, _runUp);
        DriveEvent[] events = _fullStepping
            ? [new DriveEvent(0.0, _drive.SlewCurrentAmperes, false), new DriveEvent(switchTime, _drive.SlewCurrentAmperes, true)]
            : [new DriveEvent(0.0, _drive.SlewCurrentAmperes, false)];
        var command = new PhaseCommand(new MicrostepTable(_drive.MicrostepsPerFullStep), _motor.RotorTeeth, _drive.FullStepCurrentFraction, events);
        var motor = new ChopperStepper(_motor, _drive, command, new WindingHeat(20.0, 0.0, 1.0), step);
        motor.SetCurrents(_drive.SlewCurrentAmperes, 0.0);
        var load = new RampLoad(loadFrom, start, slope, new SyncProbe(SyncProbe.HoldingTorqueShare * _motor.HoldingTorqueNewtonMetres, end));
        var parameters = new AxisParameters
        {
            RotorInertia = _inertia,
            RotorViscous = _motor.ViscousNewtonMetreSecondsPerRadian,
            RotorCoulomb = _motor.CoulombTorqueNewtonMetres,
            PlanDamping = _damping,
        };
        var dynamics = new AxisDynamics<ChopperStepper, RampLoad>(parameters, motor, load, default);
        double plan = 0.0;
        for (long i = 0; i * step < end; i++)
        {
            double next = profile.Position((i + 1) * step);
            dynamics.Step(new StepContext(i * step, step, plan, next));
            plan = next;
            if (Math.Abs(_motor.RotorTeeth * (dynamics.State.Rotor - plan)) > MoveRun.LostRadians)
            {
                return load.Load((i + 1) * step);
            }
        }

        return most;
    }

    /// <summary>Fastest swing of the rotor on its field, or decay by damping, rad/s.</summary>
    private double Fastest()
    {
        double field = _motor.RotorTeeth * ((_motor.TorqueConstantNewtonMetresPerAmpere * _drive.SlewCurrentAmperes * Math.Sqrt(2.0)) + (4.0 * _motor.DetentTorqueNewtonMetres));
        return Math.Max(Math.Sqrt(field / _inertia), (_motor.ViscousNewtonMetreSecondsPerRadian + _damping) / _inertia);
    }

    private readonly record struct RunUp(double Speed, double Seconds)
    {
        public double Position(double t) => t < Seconds ? 0.5 * Speed * t * t / Seconds : Speed * (t - (0.5 * Seconds));
    }
}
