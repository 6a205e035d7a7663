using AxisSim.Core.Envelopes;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Comparisons;

/// <summary>A slew rate that the closed form of the pull-out torque says cannot be beaten.</summary>
/// <remarks>
/// Along the planned move the needed torque (<c>ShaftNeed</c>, quasi-static) is held against <see cref="PullOutLaw.OnDrive"/> at the open-circuit voltage, in the mode that the
/// drive uses at each speed. Swings, ripple, a sagging supply and losses of the regulator only take away from that; what may help for a moment is let in by an
/// allowance of <see cref="Allowance"/> on the torque, and by leaving out the flexible part of the payload where the ramp is shorter than its period.
/// </remarks>
internal static class RateBound
{
    /// <summary>Torque above the closed form that is let pass (a choice of ours, tested against simulated rates).</summary>
    public const double Allowance = 1.15;

    private const double RateStep = 1.05;
    private const int Halvings = 6;
    private const int PathPoints = 48;

    /// <summary>The greatest rate up to which the closed form suffices, rad/s, at most <paramref name="top"/>; NaN when it does not at <paramref name="least"/>.</summary>
    public static double Of(MountSetup setup, MountAxis axis, double rampSeconds, double least, double top)
    {
        AxisModel model = setup.Axis(axis);
        bool decoupled = model.Flexible is { } tube && rampSeconds * tube.FrequencyHertz < 1.0;
        MountSetup loaded = decoupled ? setup with { Load = setup.Load.Scaled(1.0 - model.Flexible!.InertiaShare, 1.0) } : setup;
        bool Enough(double rate) => Suffices(EnvelopeStudy.With(loaded, axis, rampSeconds, rate), axis);
        if (top < least || !Enough(least))
        {
            return double.NaN;
        }

        double good = least;
        while (good < top)
        {
            double next = Math.Min(top, good * RateStep);
            if (!Enough(next))
            {
                double bad = next;
                for (int i = 0; i < Halvings; i++)
                {
                    double middle = 0.5 * (good + bad);
                    (good, bad) = Enough(middle) ? (middle, bad) : (good, middle);
                }

                return bad;
            }

            good = next;
        }

        return top;
    }

    /// <summary>Greatest share of the closed form that a planned move needs, over the whole of it.</summary>
    public static double NeededShare(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        var need = new ShaftNeed(setup, axis, plan);
        double most = 0.0;
        foreach (double time in Times(plan, axis))
        {
            (double speed, double torque) = need.At(time);
            double size = Math.Abs(speed), driving = Math.Max(0.0, speed < 0.0 ? -torque : torque);
            double available = PullOutLaw.OnDrive(model.Motor, model.Drive, size > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, size);
            most = Math.Max(most, driving == 0.0 ? 0.0 : driving / available);
        }

        return most;
    }

    private static bool Suffices(MountSetup setup, MountAxis axis) => NeededShare(setup, axis) <= Allowance;

    // Evenly over the slew, and just inside each corner of the axis' own plan, where the need jumps.
    private static IEnumerable<double> Times(MovePlan plan, MountAxis axis)
    {
        const double beside = 1e-9;
        MotionProfile profile = axis == MountAxis.Polar ? plan.PolarProfile : plan.DeclinationProfile;
        double end = profile.DurationSeconds;
        IEnumerable<double> corners = profile.Segments.SelectMany(s => new[] { s.StartSeconds + beside, s.StartSeconds + s.DurationSeconds - beside });
        return Enumerable.Range(0, PathPoints + 1).Select(i => end * i / PathPoints).Concat(corners).Where(t => t >= 0.0 && t <= end);
    }
}
