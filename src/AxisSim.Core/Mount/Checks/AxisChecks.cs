using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of bearings, motion and the rest of an axis.</summary>
internal static class AxisChecks
{
    public static void Bearings(ProblemCollector found, string owner, AxisBearings bearings)
    {
        found.At(owner, nameof(AxisModel.Bearings));
        found.Check(bearings.CoulombNewtonMetres, AxisBounds.Coulomb);
        found.Check(bearings.BreakawayNewtonMetres, AxisBounds.Coulomb);
        found.Check(bearings.ViscousNewtonMetreSecondsPerRadian, AxisBounds.Viscous);
        if (bearings.BreakawayNewtonMetres < bearings.CoulombNewtonMetres)
        {
            found.Add(nameof(bearings.BreakawayNewtonMetres), $"{ProblemCollector.Text(bearings.BreakawayNewtonMetres)} (below the running friction)", $"at least the running friction of {ProblemCollector.Text(bearings.CoulombNewtonMetres)} N m");
        }
    }

    public static void Motion(ProblemCollector found, string owner, AxisMotion motion)
    {
        found.At(owner, "Motion.Ramp");
        found.CheckGiven(motion.Ramp.Seconds, AxisBounds.RampTime);
        found.CheckGiven(motion.Ramp.RadiansPerSecondSquared, AxisBounds.Acceleration);
        found.At(owner, nameof(AxisModel.Motion));
        found.Check(motion.SlewRateRadiansPerSecond, AxisBounds.SlewRate);
        found.CheckWord(motion.Shape);
        found.Check(motion.JerkShare, AxisBounds.JerkShare);
        found.Check(motion.StartRateRadiansPerSecond, AxisBounds.StartRate);
        if (motion.StartRateRadiansPerSecond > motion.SlewRateRadiansPerSecond)
        {
            found.Add(nameof(motion.StartRateRadiansPerSecond), $"{ProblemCollector.Text(motion.StartRateRadiansPerSecond)} (above the slew rate)", $"at most the slew rate of {ProblemCollector.Text(motion.SlewRateRadiansPerSecond)} rad/s");
        }
    }

    public static void Rest(ProblemCollector found, string owner, AxisModel model)
    {
        found.At(owner);
        found.Check(model.EncoderCounts, AxisBounds.EncoderCounts);
        if (model.Flexible is { } flexible)
        {
            found.At(owner, nameof(AxisModel.Flexible));
            found.Check(flexible.FrequencyHertz, AxisBounds.FlexibleFrequency);
            found.Check(flexible.DampingRatio, AxisBounds.FlexibleDamping);
            found.Check(flexible.InertiaShare, AxisBounds.FlexibleShare);
        }
    }
}
