using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>The closed forms at any reduction of an axis.</summary>
/// <remarks>
/// <para>Torque at the axis <c>n e T</c>, with T pull-out torque (N m) of the closed form in the mode that the drive uses at that speed, e driving efficiency, n reduction.</para>
/// <para>Greatest rate: the greatest w at which that torque, less the margin, still gives the acceleration of the scenario's ramp time by the law of
/// <see cref="ReductionMatch"/>. Friction lag: dry friction Tc of the axis and Tr of the motor hold the rotor off its command by up to
/// <c>asin((Tc/(n e) + Tr)/(Km I))/Nr</c>, at the axis over n (<see cref="StaticTorque"/>; slew current).</para>
/// </remarks>
public sealed class ReductionLaw
{
    private const int Halvings = 60;
    private const double MostMotorSpeed = 1e5;

    private readonly AxisModel _model;
    private readonly SteadyLoad _load;
    private readonly double _margin;

    /// <summary>The law of one axis.</summary>
    /// <param name="setup">The mount and its move, at any reduction.</param>
    /// <param name="axis">Which axis.</param>
    /// <param name="marginShare">Margin, 0 or more: 0.3 asks for 1.3 times the torque (a load factor of 1.3).</param>
    public ReductionLaw(MountSetup setup, MountAxis axis, double marginShare)
    {
        ArgumentNullException.ThrowIfNull(setup);
        _model = setup.Axis(axis);
        _load = new SteadyLoad(setup, axis);
        _margin = marginShare;
        Match = ReductionMatch.Of(setup, axis, marginShare);
    }

    /// <summary>The inertia match.</summary>
    public ReductionMatch Match { get; }

    /// <summary>The figures at a reduction.</summary>
    public ReductionFacts At(double totalRatio)
    {
        AxisMotion motion = _model.Motion;
        double rate = motion.SlewRateRadiansPerSecond, fullStep = _model.Motor.FullStepRadians / totalRatio, gain = totalRatio * Match.DrivingEfficiency;
        double microsteps = _model.Drive.MicrostepsPerFullStep;
        return new ReductionFacts
        {
            TotalReduction = totalRatio,
            LastStageRatio = SetupEdits.LastStageRatio(_model.Train, totalRatio),
            FullStepRadians = fullStep,
            MicrostepRadians = fullStep / microsteps,
            FrictionLagRadians = FrictionLag(totalRatio),
            TorqueAtRestNewtonMetres = gain * Torque(0.0),
            TorqueAtSlewNewtonMetres = gain * Torque(rate * totalRatio),
            NeededAtSlewNewtonMetres = _load.Torque(rate),
            InertiaRatio = Match.InertiaRatio(totalRatio),
            AccelerationRadiansPerSecondSquared = Math.Max(0.0, Match.Acceleration(totalRatio)),
            RateRadiansPerSecond = Rate(totalRatio),
            PulseLimitRadiansPerSecond = RateCap.Pulses(_model) * _model.Train.TotalRatio / totalRatio,
            PulsesPerSecond = rate / fullStep * microsteps,
            MotorSpeedRadiansPerSecond = rate * totalRatio,
        };
    }

    /// <summary>How far off its command dry friction can hold the resting axis, rad to either side; NaN when friction is more than the motor.</summary>
    public double FrictionLag(double totalRatio)
    {
        double held = (_load.Friction / (totalRatio * Match.DrivingEfficiency)) + _model.Motor.CoulombTorqueNewtonMetres;
        double share = held / StaticTorque.Peak(_model.Motor, _model.Drive.SlewCurrentAmperes, 0.0);
        return share < 1.0 ? Math.Asin(share) / _model.Motor.RotorTeeth / totalRatio : double.NaN;
    }

    /// <summary>Whether the closed form gives a rate, and the acceleration of the scenario's ramp up to it, with the margin.</summary>
    public bool Carries(double totalRatio, double rateRadiansPerSecond)
    {
        AxisMotion motion = _model.Motion with { SlewRateRadiansPerSecond = rateRadiansPerSecond, Ramp = Ramp.OfSeconds(_model.Motion.RampInUseSeconds) };
        ReductionMatch here = Match with { MotorTorqueNewtonMetres = Torque(rateRadiansPerSecond * totalRatio) / LoadFactors.OfMargin(_margin), LoadTorqueNewtonMetres = _load.Torque(rateRadiansPerSecond) };
        return here.Acceleration(totalRatio) >= motion.PeakAcceleration;
    }

    /// <summary>The greatest such rate, rad/s; zero when there is none. The torque falls with speed but for the step up at the changeover; the place found is an edge in any case.</summary>
    private double Rate(double totalRatio)
    {
        double high = 1e-3 / totalRatio;
        if (!Carries(totalRatio, high))
        {
            return 0.0;
        }

        while (high * totalRatio < MostMotorSpeed && Carries(totalRatio, high))
        {
            high *= 1.3;
        }

        double low = high / 1.3;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Carries(totalRatio, middle) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private double Torque(double motorSpeed) =>
        PullOutLaw.OnDrive(_model.Motor, _model.Drive, motorSpeed > _model.Drive.ChangeoverRadiansPerSecond, _model.Drive.SupplyVolts, motorSpeed);
}
