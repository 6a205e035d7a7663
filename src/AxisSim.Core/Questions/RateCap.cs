using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>Rates beyond which there is nothing to ask: the controller cannot pulse them, the move is too short, or the motor is spent.</summary>
public static class RateCap
{
    /// <summary>Above the speed at which the closed form gives less than this share of the holding torque, there is nothing to look for (a choice of ours).</summary>
    public const double LeastTorqueShare = 0.02;

    private const double GreatestMotorSpeed = 1e5;

    /// <summary>The angle that an axis turns in the move, rad; without sign and without tracking.</summary>
    public static double Distance(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return setup.Move.Distance(axis);
    }

    /// <summary>The greatest rate that the controller of an axis can pulse, rad/s at the axis; infinite when nothing limits it.</summary>
    public static double Pulses(AxisModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double microstepsPerTurn = 4.0 * model.Motor.RotorTeeth * model.Drive.MicrostepsPerFullStep;
        return 2.0 * Math.PI * model.Drive.MaximumPulseRateHertz / microstepsPerTurn / model.Train.TotalRatio;
    }

    /// <summary>The greatest rate that the search allows with a ramp time, rad/s, and why.</summary>
    public static (double RateRadiansPerSecond, Limit Limit) Of(MountSetup setup, MountAxis axis, double rampSeconds)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double pulses = Pulses(model);

        // Each ramp, of either shape, runs at the mean of start rate and slew rate.
        double length = (Distance(setup, axis) / rampSeconds) - model.Motion.StartRateRadiansPerSecond;
        double speed = SpentSpeed(model) / model.Train.TotalRatio;
        return pulses <= length && pulses <= speed ? (pulses, Limit.PulseRate)
            : length <= speed ? (length, Limit.MoveLength)
            : (speed, Limit.MotorSpeed);
    }

    // Torque falls with speed at a limited voltage, so that doubling and halving finds the place.
    private static double SpentSpeed(AxisModel model)
    {
        double least = LeastTorqueShare * model.Motor.HoldingTorqueNewtonMetres;
        bool Enough(double speed) => Math.Max(
            PullOutLaw.OnDrive(model.Motor, model.Drive, false, model.Drive.SupplyVolts, speed),
            PullOutLaw.OnDrive(model.Motor, model.Drive, true, model.Drive.SupplyVolts, speed)) > least;
        double high = 1.0;
        while (high < GreatestMotorSpeed && Enough(high))
        {
            high *= 2.0;
        }

        double low = high / 2.0;
        for (int i = 0; i < 20; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Enough(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }
}
