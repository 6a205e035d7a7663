using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>Which total reductions do for the scenario's own move, in closed form: each condition by itself. NaN where no reduction meets it.</summary>
public sealed record ReductionWindow
{
    /// <summary>From here on the motor carries friction, imbalance and wind with the margin asked for.</summary>
    public required double LeastByLoad { get; init; }

    /// <summary>From here on it also accelerates all inertia as the scenario asks for, at low speed; the two lie close together where inertia does not matter.</summary>
    public required double LeastByInertia { get; init; }

    /// <summary>From here on dry friction holds the resting axis within the settling band.</summary>
    public required double LeastByFrictionLag { get; init; }

    /// <summary>From here on a microstep is no more than the settling band.</summary>
    public required double LeastByMicrostep { get; init; }

    /// <summary>Up to here the controller can pulse the scenario's slew rate; infinite when nothing limits it.</summary>
    public required double MostByPulses { get; init; }

    /// <summary>Up to here the supply voltage leaves the motor enough torque at the scenario's slew rate.</summary>
    public required double MostBySupply { get; init; }

    /// <summary>Up to here the rotor's own inertia leaves enough for the acceleration that the scenario asks for.</summary>
    public required double MostByInertia { get; init; }

    /// <summary>The least reduction that meets every condition.</summary>
    public double Least => new[] { LeastByLoad, LeastByInertia, LeastByFrictionLag, LeastByMicrostep }.Max();

    /// <summary>The greatest reduction that meets every condition.</summary>
    public double Most => new[] { MostByPulses, MostBySupply, MostByInertia }.Min();

    private const double From = 0.1, To = 1e6;
    private const int Places = 240, Halvings = 40;

    /// <summary>The window of an axis.</summary>
    public static ReductionWindow Of(MountSetup setup, MountAxis axis, double marginShare)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        var law = new ReductionLaw(setup, axis, marginShare);
        double rate = model.Motion.SlewRateRadiansPerSecond, acceleration = model.Motion.PeakAcceleration, band = setup.Move.SettleToleranceRadians;
        double microstep = model.Motor.FullStepRadians / model.Drive.MicrostepsPerFullStep;
        return new ReductionWindow
        {
            LeastByLoad = double.IsFinite(law.Match.LeastRatio) ? law.Match.LeastRatio : double.NaN,
            LeastByInertia = Edge(ratio => law.Match.Acceleration(ratio) >= acceleration, least: true),
            LeastByFrictionLag = Edge(ratio => law.FrictionLag(ratio) <= band, least: true),
            LeastByMicrostep = microstep / band,
            MostByPulses = RateCap.Pulses(model) * model.Train.TotalRatio / rate,
            MostBySupply = Edge(ratio => law.Carries(ratio, rate), least: false),
            MostByInertia = Edge(ratio => law.Match.Acceleration(ratio) >= acceleration, least: false),
        };
    }

    /// <summary>The least or the greatest reduction that meets a condition; NaN when none of an even row of them does.</summary>
    private static double Edge(Func<double, bool> meets, bool least)
    {
        double step = Math.Pow(To / From, 1.0 / Places);
        double[] row = [.. Enumerable.Range(0, Places + 1).Select(i => least ? From * Math.Pow(step, i) : To / Math.Pow(step, i))];
        int hit = Array.FindIndex(row, ratio => meets(ratio));
        if (hit <= 0)
        {
            return hit < 0 ? double.NaN : row[0];
        }

        (double good, double bad) = (row[hit], row[hit - 1]);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = Math.Sqrt(good * bad);
            (good, bad) = meets(middle) ? (middle, bad) : (good, middle);
        }

        return good;
    }
}
