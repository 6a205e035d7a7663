using AxisSim.Core.Drives;

namespace AxisSim.Core.Motors;

/// <summary>A two-phase machine fed by sinusoidal phase voltages <c>V cos(Nr p + f), V sin(Nr p + f)</c>, p the planned angle.</summary>
/// <remarks>
/// The textbook feed, for which pull-out has a closed form. The voltage of a step is its mean over it. Positive f leads.
/// </remarks>
internal struct SineVoltageStepper : IMotorLaw
{
    private readonly TwoPhaseLaw _law;
    private readonly double _conductance;
    private readonly double _inductance;
    private readonly double _peakVolts;
    private readonly double _lead;
    private readonly PhaseDecay _decay;
    private double _currentA;
    private double _currentB;

    public SineVoltageStepper(TwoPhaseLaw law, double resistanceOhms, double inductanceHenries, double peakVolts, double leadRadians, double stepSeconds)
    {
        _law = law;
        _conductance = 1.0 / resistanceOhms;
        _inductance = inductanceHenries;
        _peakVolts = peakVolts;
        _lead = leadRadians;
        _decay = PhaseDecay.Over(stepSeconds, inductanceHenries * _conductance, inductanceHenries * _conductance);
    }

    public MotorReading Reading { get; private set; }

    public readonly bool IsFinite => double.IsFinite(_currentA + _currentB);

    public double Advance(in StepContext step, double rotorMidRadians, double speedMidRadiansPerSecond)
    {
        TwoPhaseLaw.Instant at = _law.At(rotorMidRadians, speedMidRadiansPerSecond, step.StepSeconds);
        double half = 0.5 * _law.Teeth * (step.PlanEndRadians - step.PlanStartRadians);
        double mean = Math.Abs(half) < 1e-6 ? 1.0 : Math.Sin(half) / half;
        (double sin, double cos) = Math.SinCos((0.5 * _law.Teeth * (step.PlanEndRadians + step.PlanStartRadians)) + _lead);
        double startA = _currentA;
        double startB = _currentB;
        PhaseCurrent a = PhaseCircuit.Driven(_decay, startA, _law.BackEmfA(at), _conductance, _peakVolts * mean * cos);
        PhaseCurrent b = PhaseCircuit.Driven(_decay, startB, _law.BackEmfB(at), _conductance, _peakVolts * mean * sin);
        _currentA = a.End;
        _currentB = b.End;
        double torque = _law.CurrentTorque(at, a.Mean, b.Mean, a.End - startA, b.End - startB);
        double stored = 0.5 * _inductance * ((a.End * a.End) + (b.End * b.End));
        Reading = new MotorReading(a.Mean, b.Mean, double.NaN, double.NaN, stored, _peakVolts, double.NaN, false);
        return torque + _law.DetentTorque(at);
    }

    public readonly void EndBlock(double blockSeconds)
    {
    }
}
