using AxisSim.Core.Batches;
using AxisSim.Core.Bounds;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Envelopes;

/// <summary>The greatest slew rate that arrives, ramp by ramp, for one or many mounts.</summary>
/// <remarks>
/// Safe is the greatest rate up to which every rate that was tried arrives (keeps sync and clutch until shortly after the slew): an island of arrival above
/// a failure does not count. All questions are asked together, round by round, so that a batch is large. Above the search lie rates that the controller cannot
/// pulse, that the move is too short to reach, or at which the motor has hardly any torque.
/// </remarks>
public static class EnvelopeStudy
{
    /// <summary>Above the speed at which the closed form gives less than this share of the holding torque, there is nothing to look for (a choice of ours).</summary>
    public const double LeastTorqueShare = 0.02;

    private const double GreatestMotorSpeed = 1e5;

    /// <summary>The answers, in the order of the cases.</summary>
    /// <exception cref="ArgumentException">A setup will not do (<see cref="SetupChecks"/>); the message lists all problems of all cases.</exception>
    public static IReadOnlyList<SafeRate> Run(IReadOnlyList<EnvelopeCase> cases, MountAxis axis, EnvelopeOptions options)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(options);
        EntryCheck.RequireAll(cases, one => Problems(one, axis), options.StepSeconds, nameof(cases));
        return RunUnchecked(cases, axis, options);
    }

    /// <summary>The same for setups that a study has derived from one that was checked.</summary>
    internal static IReadOnlyList<SafeRate> RunUnchecked(IReadOnlyList<EnvelopeCase> cases, MountAxis axis, EnvelopeOptions options)
    {
        double resolution = options.ResolutionRadiansPerSecond;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(resolution, nameof(options));
        Item[] items = [.. cases.Select(one => new Item(one, axis, resolution))];
        int done = 0;
        double usual = Math.Max(1, items.Length * RateSearch.Usual);
        while (true)
        {
            (Item Item, int Rate)[] asked = [.. items.SelectMany(item => item.Search.Next().Select(rate => (item, rate)))];
            if (asked.Length == 0)
            {
                options.Progress?.Invoke(1.0);
                return [.. items.Select(item => item.Search.Result(item.Case.RampSeconds))];
            }

            BatchCase[] batch = [.. asked.Select(question => new BatchCase(With(question.Item.Case.Setup, axis, question.Item.Case.RampSeconds, question.Rate * resolution), axis))];
            BatchResult[] results = BatchStudy.RunUnchecked(batch, new BatchOptions
            {
                Depth = BatchDepth.Outcome,
                StepSeconds = options.StepSeconds,
                Threads = options.Threads,
                Stop = options.Stop,
                Finished = (_, _) => options.Progress?.Invoke(Math.Min(0.99, Interlocked.Increment(ref done) / usual)),
            });
            for (int i = 0; i < asked.Length; i++)
            {
                asked[i].Item.Search.Take(asked[i].Rate, results[i].End);
            }
        }
    }

    /// <summary>A setup with another slew rate and ramp time of an axis.</summary>
    public static MountSetup With(MountSetup setup, MountAxis axis, double rampSeconds, double rateRadiansPerSecond)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        AxisMotion motion = model.Motion with { SlewRateRadiansPerSecond = rateRadiansPerSecond, Ramp = Ramp.OfSeconds(rampSeconds) };
        return setup.With(axis, model with { Motion = motion });
    }

    /// <summary>The angle that an axis turns in the move, rad; without sign and without tracking.</summary>
    public static double Distance(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        (MountPose from, MountPose to) = (setup.Move.Start, setup.Move.End);
        return Math.Abs(axis == MountAxis.Polar ? to.PolarRadians - from.PolarRadians : to.DeclinationRadians - from.DeclinationRadians);
    }

    /// <summary>The greatest rate that the controller of an axis can pulse, rad/s at the axis; infinite when nothing limits it.</summary>
    public static double PulseLimit(AxisModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double microstepsPerTurn = 4.0 * model.Motor.RotorTeeth * model.Drive.MicrostepsPerFullStep;
        return 2.0 * Math.PI * model.Drive.MaximumPulseRateHertz / microstepsPerTurn / model.Train.TotalRatio;
    }

    /// <summary>The greatest rate that the search allows with a ramp, and why.</summary>
    public static (double RateRadiansPerSecond, EnvelopeLimit Limit) Top(MountSetup setup, MountAxis axis, double rampSeconds)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double ratio = model.Train.TotalRatio;
        double pulses = PulseLimit(model);

        // Each ramp, of either shape, runs at the mean of start rate and slew rate.
        double length = (Distance(setup, axis) / rampSeconds) - model.Motion.StartRateRadiansPerSecond;
        double speed = SpentSpeed(model) / ratio;
        return pulses <= length && pulses <= speed ? (pulses, EnvelopeLimit.PulseRate)
            : length <= speed ? (length, EnvelopeLimit.MoveLength)
            : (speed, EnvelopeLimit.MotorSpeed);
    }

    private static IReadOnlyList<SetupProblem> Problems(EnvelopeCase one, MountAxis axis)
    {
        IReadOnlyList<SetupProblem> found = SetupChecks.Problems(one.Setup, axis);
        return AxisBounds.RampTime.Holds(one.RampSeconds) ? found : [.. found, new SetupProblem(nameof(one.RampSeconds), ProblemCollector.Text(one.RampSeconds), AxisBounds.RampTime.Allowed)];
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

    private sealed class Item(EnvelopeCase one, MountAxis axis, double resolution)
    {
        public EnvelopeCase Case { get; } = one;

        public SafeRateSearch Search { get; } = new(
            resolution,
            Math.Max(one.LeastRadiansPerSecond, one.Setup.Axis(axis).Motion.StartRateRadiansPerSecond),
            Top(one.Setup, axis, one.RampSeconds),
            one.AlsoTryRadiansPerSecond);
    }
}
