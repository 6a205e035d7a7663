using System.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace AxisSim.Core.Motors;

/// <summary>A machine in steady running, and the eigenvalues of its small swings; symbols as in <see cref="SmallSwings"/>.</summary>
internal readonly struct SwingMachine
{
    private readonly double _constant;
    private readonly double _resistance;
    private readonly double _inductance;
    private readonly double _teeth;
    private readonly double _inertia;
    private readonly double _drag;
    private readonly double _reactance;
    private readonly double _backEmf;

    public SwingMachine(StepperMotor motor, double inertia, double damping, double speed, double loadTorque)
    {
        _constant = motor.TorqueConstantNewtonMetresPerAmpere;
        (_resistance, _inductance, _teeth) = (motor.ResistanceOhms, motor.InductanceHenries, motor.RotorTeeth);
        (_inertia, _drag) = (inertia, motor.ViscousNewtonMetreSecondsPerRadian + damping);
        _reactance = _teeth * speed * _inductance;
        _backEmf = _constant * speed;
        Quadrature = (loadTorque + motor.CoulombTorqueNewtonMetres + (motor.ViscousNewtonMetreSecondsPerRadian * speed)) / _constant;
    }

    /// <summary>The part of the current that carries the load, A.</summary>
    public double Quadrature { get; }

    /// <summary>Voltage of a steady current, V.</summary>
    public Complex Voltage(Complex current) => (new Complex(_resistance, _reactance) * current) + new Complex(0.0, _backEmf);

    /// <summary>The other part of the current under a voltage, on the stable side, A; null when no current carries the load.</summary>
    public double? DirectCurrent(double peakVolts)
    {
        // |Z i + j E| = V is a quadratic in the direct current; the greater root is the stable side.
        double impedance = (_resistance * _resistance) + (_reactance * _reactance), half = _reactance * _backEmf;
        double inPhase = (_resistance * Quadrature) + _backEmf, across = _reactance * Quadrature;
        double discriminant = (half * half) - (impedance * ((across * across) + (inPhase * inPhase) - (peakVolts * peakVolts)));
        return discriminant < 0.0 ? null : (-half + Math.Sqrt(discriminant)) / impedance;
    }

    /// <summary>The slowest decaying or fastest growing mode under a voltage that turns with the command.</summary>
    /// <param name="current">Steady current, A.</param>
    public SmallSwing Swing(Complex current)
    {
        double perInductance = 1.0 / _inductance;

        // di/dt = (dv - Z di - j (Km + Nr L i) dw)/L
        Complex bySpeed = -Complex.ImaginaryOne * (_constant + (_teeth * _inductance * current)), byLead = Complex.ImaginaryOne * Voltage(current);
        Matrix<double> jacobian = Matrix<double>.Build.DenseOfRowArrays(
            [-_resistance * perInductance, _reactance * perInductance, bySpeed.Real * perInductance, byLead.Real * perInductance],
            [-_reactance * perInductance, -_resistance * perInductance, bySpeed.Imaginary * perInductance, byLead.Imaginary * perInductance],
            [0.0, _constant / _inertia, -_drag / _inertia, 0.0],
            [0.0, 0.0, -_teeth, 0.0]);
        Complex worst = jacobian.Evd().EigenValues.MaxBy(value => value.Real);
        return new SmallSwing(worst.Real, Math.Abs(worst.Imaginary) / (2.0 * Math.PI));
    }
}
