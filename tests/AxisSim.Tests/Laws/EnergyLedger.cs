using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Stepping;

namespace AxisSim.Tests.Laws;

/// <summary>Adds up every flow of energy of a run (without elastic stages, flexible payload or changing inertia), to see whether they balance.</summary>
internal sealed class EnergyLedger(StepperMotor motor, double startJoulesPlan)
{
    private AxisState _before;
    private bool _started;

    public double Electrical { get; private set; }

    public double Copper { get; private set; }

    public double Friction { get; private set; }

    public double Damping { get; private set; }

    public double Outside { get; private set; }

    /// <summary>Energy stored at the start of the run (set at the first step) and now, J.</summary>
    public double StoredAtStart { get; private set; } = startJoulesPlan;

    public double Stored { get; private set; }

    public double Residual => Electrical + Outside - Copper - Friction - Damping - (Stored - StoredAtStart);

    public void Start(MoveRun run, double magneticJoules)
    {
        _before = run.State;
        _started = true;
        StoredAtStart = Energy(run, 0.0) + magneticJoules;
    }

    public void See(in StepContext step, MoveRun run)
    {
        Assert.True(_started);
        AxisParameters p = run.Parameters;
        AxisState now = run.State;
        MotorReading reading = run.Reading;
        double h = step.StepSeconds;
        double middle = step.StartSeconds + (0.5 * h);
        double rotorTurn = now.Rotor - _before.Rotor;
        double axisTurn = now.Axis - _before.Axis;
        double rotorSpeed = rotorTurn / h;
        double axisSpeed = axisTurn / h;
        Electrical += reading.ElectricalWatts * h;
        Copper += reading.CopperWatts * h;
        double mesh = run.MeshTorque;
        double rub = mesh / p.WormRatio;
        Friction += (p.RotorCoulomb * Math.Abs(rotorTurn)) + (rotorTurn > 0.0 ? p.Loss.ResistingPositive(rub) * rotorTurn : -p.Loss.ResistingNegative(rub) * rotorTurn);
        Friction += p.AxisCoulomb * Math.Abs(axisTurn);
        Damping += (p.RotorViscous * rotorSpeed * rotorSpeed * h) + (p.AxisViscous * axisSpeed * axisSpeed * h);
        (double error, double slope) = run.PeriodicErrorAt(middle, 0.5 * (now.Rotor + _before.Rotor) / p.WormRatio);
        double twist = (0.5 * (now.Rotor + _before.Rotor) / p.WormRatio) + error - (0.5 * (now.Axis + _before.Axis));
        double twistTurn = (rotorTurn / p.WormRatio * (1.0 + slope)) - axisTurn;
        Damping += (mesh - (p.Mesh.Stiffness * p.Mesh.DeadZone(twist))) * twistTurn;
        Outside += run.Outside(0.5 * (now.Axis + _before.Axis), middle) * axisTurn;
        Stored = Energy(run, step.StartSeconds + h) + reading.MagneticJoules;
        _before = now;
    }

    private double Energy(MoveRun run, double seconds)
    {
        AxisParameters p = run.Parameters;
        AxisState s = run.State;
        (double error, _) = run.PeriodicErrorAt(seconds, s.Rotor / p.WormRatio);
        double stretch = p.Mesh.DeadZone((s.Rotor / p.WormRatio) + error - s.Axis);
        double detent = -motor.DetentTorqueNewtonMetres / (4.0 * motor.RotorTeeth) * Math.Cos(4.0 * motor.RotorTeeth * s.Rotor);
        return (0.5 * p.RotorInertia * s.RotorSpeed * s.RotorSpeed) + (0.5 * p.AxisInertia * s.AxisSpeed * s.AxisSpeed)
            + (0.5 * p.Mesh.Stiffness * stretch * stretch) + detent;
    }
}
