using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Why an axis that keeps step does not come to rest, and what to try.</summary>
internal static class UnsettledText
{
    /// <summary>Writes both parts.</summary>
    /// <param name="page">Where to.</param>
    /// <param name="report">The move.</param>
    /// <param name="outcome">The axis' outcome.</param>
    /// <param name="direction">Direction of its slew, 1 or -1; 0 when it does not move.</param>
    public static void Write(Page page, MoveReport report, AxisOutcome outcome, double direction)
    {
        MoveSettings move = report.Setup.Move;
        AxisModel model = report.Setup.Axis(outcome.Axis);
        bool tracks = outcome.Axis == MountAxis.Polar && move.FollowUp == FollowUp.Sidereal;
        string tolerance = Units.SmallAngle(move.SettleToleranceRadians);
        page.Text($"The motor keeps step, but in the {Units.Time(move.ObserveSeconds)} watched after the slew the axis does not come to stay within {tolerance} of one place, or too late to be sure of it: it swings on its stiffness, {(tracks ? "sticks and slips as it tracks, " : "")}follows wind or periodic error, or the watch is too short.");
        if (tracks && direction < 0.0)
        {
            page.Text($"The slew ends against the direction of tracking. Before the axis follows the sky, the drive must cross the backlash of {Units.SmallAngle(model.Train.BacklashRadians)} and wind the train up the other way, which takes about {Units.Time(TakeUpSeconds(model))} at the sidereal rate.");
        }

        AxisAdvice advice = report.AdviceFor(outcome.Axis);
        page.Heading($"What to try, {outcome.Axis.Words()}");
        page.Text(advice.Settles.Count switch
        {
            0 => "None of a longer watch, a gentler end of the slew, less sticking in the bearings and a tolerance of twice the width lets it settle.",
            1 => "With this it settles:",
            _ => "With each of these alone it settles:",
        });
        CureText.Items(page, advice.Settles);
    }

    /// <summary>Settings that may let the axis settle; whoever tells them has run them first.</summary>
    public static IReadOnlyList<CureAdvice> Candidates(MoveReport report, AxisOutcome outcome)
    {
        MoveSettings move = report.Setup.Move;
        AxisModel model = report.Setup.Axis(outcome.Axis);
        var candidates = new List<CureAdvice> { new("Watch for longer: it settles later.", [$"move.observe={Say.Number(Math.Ceiling(2.0 * move.ObserveSeconds))} s"]) };
        if (model.Motion.Shape == RampShape.Trapezoid)
        {
            candidates.Add(new("A gentler end of the slew, which excites less swing.", [$"{outcome.Axis.Key()}.motion.shape=s-curve"]));
        }

        if (model.Bearings.BreakawayNewtonMetres > model.Bearings.CoulombNewtonMetres)
        {
            candidates.Add(new("Less sticking in the bearings (grease, preload, seals): breakaway friction as low as running friction.", [$"{outcome.Axis.Key()}.axis.breakaway={Say.Number(model.Bearings.CoulombNewtonMetres, 4)} N*m"]));
        }

        candidates.Add(new($"A wider settling tolerance, if {Units.SmallAngle(move.SettleToleranceRadians)} is finer than the work needs.", [$"settling.tolerance={Say.Number(2.0 * Units.Arcseconds(move.SettleToleranceRadians))} arcsec"]));
        return candidates;
    }

    // Friction holds the train wound up by Tc/k one way, and must be wound up by as much the other way: (b + 2 Tc/k) / sidereal rate.
    private static double TakeUpSeconds(AxisModel model) =>
        (model.Train.BacklashRadians + (2.0 * model.Bearings.CoulombNewtonMetres / model.Train.StiffnessNewtonMetresPerRadian)) / SkyRates.MeanSiderealRadiansPerSecond;
}
