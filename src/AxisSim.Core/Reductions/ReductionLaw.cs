using AxisSim.Core.Envelopes;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>The closed forms at any reduction of an axis.</summary>
/// <remarks>
/// <para>Torque at the axis <c>n e T</c>, with T pull-out torque (N m) of the closed form in the mode that the drive uses at that speed, e driving efficiency, n reduction.</para>
/// <para>Greatest steady rate: the greatest w with <c>TL(w) &lt;= (1 - m) n e T(n w)</c>, m margin. Friction lag: dry friction Tc of the axis and Tr of the motor hold the rotor
/// off its command by up to <c>asin((Tc/(n e) + Tr)/(Km I))/Nr</c>, at the axis over n (the static torque of <see cref="StaticTorque"/>, slew current).</para>
/// </remarks>
public static class ReductionLaw
{
    private const int Halvings = 60;

    /// <summary>The figures at a reduction.</summary>
    /// <param name="setup">The mount and its move, at any reduction.</param>
    /// <param name="axis">Which axis.</param>
    /// <param name="totalRatio">Total reduction.</param>
    /// <param name="marginShare">Share of the motor's torque that is kept in hand, 0 to below 1.</param>
    public static ReductionFacts At(MountSetup setup, MountAxis axis, double totalRatio, double marginShare)
    {
        ArgumentNullException.ThrowIfNull(setup);
        MountSetup changed = ReductionTrain.With(setup, axis, totalRatio);
        AxisModel model = changed.Axis(axis);
        StepperMotor motor = model.Motor;
        ReductionMatch match = ReductionMatch.Of(setup, axis, marginShare);
        var load = new SteadyLoad(setup, axis);
        double gain = totalRatio * match.DrivingEfficiency, rate = model.Motion.SlewRateRadiansPerSecond, fullStep = motor.FullStepRadians / totalRatio;
        double friction = ((load.Friction / gain) + motor.CoulombTorqueNewtonMetres) / StaticTorque.Peak(motor, model.Drive.SlewCurrentAmperes, 0.0);
        return new ReductionFacts
        {
            TotalReduction = totalRatio,
            LastStageRatio = ReductionTrain.LastStageRatio(model.Train, totalRatio),
            FullStepRadians = fullStep,
            MicrostepRadians = fullStep / model.Drive.MicrostepsPerFullStep,
            FrictionLagRadians = friction < 1.0 ? Math.Asin(friction) / motor.RotorTeeth / totalRatio : double.NaN,
            TorqueAtRestNewtonMetres = gain * Torque(model, 0.0),
            TorqueAtSlewNewtonMetres = gain * Torque(model, rate * totalRatio),
            NeededAtSlewNewtonMetres = load.Torque(rate),
            InertiaRatio = match.InertiaRatio(totalRatio),
            AccelerationRadiansPerSecondSquared = Math.Max(0.0, match.Acceleration(totalRatio)),
            RateRadiansPerSecond = Rate(model, load, gain * (1.0 - marginShare)),
            PulseLimitRadiansPerSecond = EnvelopeStudy.PulseLimit(model),
            PulsesPerSecond = rate / fullStep * model.Drive.MicrostepsPerFullStep,
            MotorSpeedRadiansPerSecond = rate * totalRatio,
        };
    }

    private static double Torque(AxisModel model, double motorSpeed) =>
        PullOutLaw.OnDrive(model.Motor, model.Drive, motorSpeed > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, motorSpeed);

    // The torque falls with speed but for the step up at the changeover; the place found is an edge in any case.
    private static double Rate(AxisModel model, SteadyLoad load, double gain)
    {
        const double MostMotorSpeed = 1e5;
        double ratio = model.Train.TotalRatio;
        bool Carries(double rate) => load.Torque(rate) <= gain * Torque(model, rate * ratio);
        if (!Carries(0.0))
        {
            return 0.0;
        }

        double high = 1e-3 / ratio;
        while (high * ratio < MostMotorSpeed && Carries(high))
        {
            high *= 1.3;
        }

        double low = high / 1.3;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Carries(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }
}
