using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;

namespace AxisSim.Tests.Assemblies;

/// <summary>Growth and frequency of a small swing, measured on the simulated machine with a rigid inertia in steady running.</summary>
/// <remarks>
/// The machine runs up and settles with strong damping; then it gets the damping of the case and a small push. The load angle is sampled at whole full steps, so that
/// what repeats with each step drops out (or, where a smooth machine has longer steps, ten times in a swing), and fitted by <c>x(n+1) = a x(n) + b x(n-1) + c</c>, whose roots are growth and frequency.
/// </remarks>
internal static class SimulatedSwing
{
    private const double Settling = 0.6;
    private const double Push = 0.01;
    private const double Electrical = 0.012;
    private const double Step = 2e-6;

    /// <summary>On a chopper drive.</summary>
    /// <remarks>The frequency need only be about right, and the time long enough for some swings; both are asked for, for a swing may take a step or hundreds.</remarks>
    public static (double Growth, double Hertz) OnDrive(StepperMotor motor, ChopperDrive drive, bool full, double inertia, double damping, double speed, double load, double hertz, double seconds)
    {
        var command = new PhaseCommand(MicrostepTable.Of(drive.MicrostepsPerFullStep), motor.RotorTeeth, drive.FullStepCurrentFraction, [new DriveEvent(0.0, drive.SlewCurrentAmperes, false), new DriveEvent(0.25, drive.SlewCurrentAmperes, full)]);
        var law = new ChopperStepper(motor, drive, command, new WindingHeat(20.0, 0.0, 1.0), Step);
        law.SetCurrents(drive.SlewCurrentAmperes, 0.0);
        return Of(law, motor, full, inertia, damping, speed, load, hertz, seconds);
    }

    /// <summary>Under sinusoidal voltage.</summary>
    public static (double Growth, double Hertz) UnderVoltage(StepperMotor motor, double volts, double inertia, double damping, double speed, double load, double hertz, double seconds) => Of(
        new SineVoltageStepper(new TwoPhaseLaw(motor.RotorTeeth, motor.TorqueConstantNewtonMetresPerAmpere, 0.0), motor.ResistanceOhms, motor.InductanceHenries, volts, 0.0, Step),
        motor, false, inertia, damping, speed, load, hertz, seconds);

    private static (double Growth, double Hertz) Of<TMotor>(TMotor law, StepperMotor motor, bool full, double inertia, double damping, double speed, double load, double hertz, double seconds)
        where TMotor : struct, IMotorLaw
    {
        AxisParameters Parameters(double plan) => new()
        {
            RotorInertia = inertia, RotorViscous = motor.ViscousNewtonMetreSecondsPerRadian, RotorCoulomb = motor.CoulombTorqueNewtonMetres, PlanDamping = plan, AxisInertia = double.PositiveInfinity,
        };
        double Position(double t) => t < 0.2 ? 2.5 * speed * t * t : speed * (t - 0.1);
        var force = new FunctionLoad((t, _) => -load * Math.Clamp((t - 0.3) / 0.1, 0.0, 1.0));
        double strong = 2.0 * inertia * 2.0 * Math.PI * hertz;
        var axis = new AxisDynamics<TMotor, FunctionLoad>(Parameters(strong), law, force, default);
        long index = 0;
        void Run(double until)
        {
            for (; index * Step < until; index++)
            {
                axis.Step(new StepContext(index * Step, Step, Position(index * Step), Position((index + 1) * Step)));
            }
        }

        double fullStep = motor.FullStepRadians / speed;
        double sample = full || fullStep * hertz < 0.1 ? Math.Max(1.0, Math.Floor(0.1 / hertz / fullStep)) * fullStep : 0.1 / hertz;
        double start = Math.Ceiling(Settling / sample) * sample;
        Run(start);
        AxisState state = axis.State;
        state.RotorSpeed += Push * 2.0 * Math.PI * hertz / motor.RotorTeeth;
        axis = new AxisDynamics<TMotor, FunctionLoad>(Parameters(damping), axis.Motor, force, state);
        var lags = new List<double>();
        for (double t = start + Electrical; t < start + seconds; t += sample)
        {
            Run(t);
            // Between two steps: the load angle at the very time of the sample.
            double over = (index * Step) - t;
            lags.Add(motor.RotorTeeth * (axis.State.Rotor - (over * axis.State.RotorSpeed) - Position(t)));
        }

        return Fitted(lags, sample);
    }

    private static (double Growth, double Hertz) Fitted(List<double> x, double sample)
    {
        int n = x.Count - 2;
        double[][] rows = [.. Enumerable.Range(0, n).Select(i => new[] { x[i + 1], x[i], 1.0 })];
        double[] ahead = [.. x.Skip(2)];
        double[] fit = MathNet.Numerics.LinearRegression.MultipleRegression.QR(rows, ahead);
        System.Numerics.Complex apart = System.Numerics.Complex.Sqrt((fit[0] * fit[0] * 0.25) + fit[1]);
        System.Numerics.Complex root = (0.5 * fit[0]) + (fit[0] < 0.0 ? -apart : apart);
        System.Numerics.Complex mode = System.Numerics.Complex.Log(root) / sample;
        return (mode.Real, Math.Abs(mode.Imaginary) / (2.0 * Math.PI));
    }
}
