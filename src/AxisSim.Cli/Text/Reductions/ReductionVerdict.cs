using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;

namespace AxisSim.Cli.Text.Reductions;

/// <summary>How the scenario's reduction compares with the inertia match, and what binds, in a sentence or two.</summary>
internal static class ReductionVerdict
{
    /// <summary>A reduction this near the match is called matched: acceleration is within 1 % of its greatest there without load torque.</summary>
    private const double Matched = 1.15;

    /// <summary>Whether the scenario's slew rate is reached with the margin asked for.</summary>
    public static bool Good(ReductionReport report) => report.Result.Own.SafeRateRadiansPerSecond >= report.SlewRateRadiansPerSecond;

    /// <summary>The verdict.</summary>
    public static string Of(ReductionReport report) => $"{Say.Sentence(report.Axis.Words())}: {Place(report)} {Binds(report)}";

    /// <summary>How far the scenario's reduction lies from the match.</summary>
    public static string Place(ReductionReport report)
    {
        double own = report.Result.Own.Facts.TotalReduction, best = report.Result.Match.OptimumRatio;
        if (double.IsInfinity(best))
        {
            return $"your reduction of {Say.Number(own, 4)} has no inertia match, for the motor has no torque to spare.";
        }

        string match = $"the inertia-matched one of {Say.Number(best)}";
        return own > best * Matched ? $"your reduction of {Say.Number(own, 4)} is {Say.Number(own / best, 2)} times {match}."
            : own < best / Matched ? $"your reduction of {Say.Number(own, 4)} is {Say.Number(best / own, 2)} times smaller than {match}."
            : $"your reduction of {Say.Number(own, 4)} is about {match}.";
    }

    /// <summary>The margin that is kept.</summary>
    public static string InHand(ReductionReport report) => report.Result.MarginShare > 0.0 ? $"with a margin of {Units.Percent(report.Result.MarginShare)} (load factor {Say.Number(1.0 + report.Result.MarginShare)})" : "with no margin";

    private static string Binds(ReductionReport report)
    {
        ReductionPoint own = report.Result.Own;
        string margin = Say.Sentence(InHand(report));
        string asked = $"the file asks for {Units.Rate(report.SlewRateRadiansPerSecond)}";
        return double.IsNaN(own.SafeRateRadiansPerSecond)
            ? $"{margin} NO RATE THAT WAS TRIED ARRIVES; {asked}. What binds is {LimitWords.Noun(own.Bound)}."
            : $"{margin} {(Good(report) ? $"it slews at up to {Units.Rate(own.SafeRateRadiansPerSecond)}" : $"IT IS TOO SLOW: up to {Units.Rate(own.SafeRateRadiansPerSecond)}")}; {asked}. What binds above that is {LimitWords.Noun(own.Bound)}{(own.Bound == Limit.Inertia ? "." : ", not inertia.")}";
    }
}
