using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;

namespace AxisSim.Cli.Text.Moves;

/// <summary>How near the edge is in slew rate, at the load as it is, in a sentence.</summary>
internal static class RateRoomText
{
    /// <summary>The sentence.</summary>
    /// <param name="rates">What the search found.</param>
    /// <param name="present">The slew rate of the file, rad/s.</param>
    public static string Of(GreatestRate rates, double present)
    {
        string ends = rates.Cap is { } cap ? $"where the search ends: {LimitWords.Why(cap)}" : "";
        if (rates.Tried == 0)
        {
            return $"no other rate can be tried with this ramp: {LimitWords.Why(rates.TopLimit)}";
        }

        if (rates.Around(present) is not { } around)
        {
            return (double.IsNaN(rates.RateRadiansPerSecond) ? $"none: even {Rate(rates.FirstFailingRadiansPerSecond)} fails" : $"none: it arrives up to {Rate(rates.RateRadiansPerSecond)}, and fails at {Rate(rates.FirstFailingRadiansPerSecond)}")
                + Again(rates, present);
        }

        double? failing = rates.Answers.Where(answer => answer.RateRadiansPerSecond > around.ToRadiansPerSecond).Select(answer => (double?)answer.RateRadiansPerSecond).FirstOrDefault();
        return (failing is { } first ? $"it arrives up to {Rate(around.ToRadiansPerSecond)}, and fails at {Rate(first)}" : $"it arrives at every rate tried up to {Rate(around.ToRadiansPerSecond)}, {ends}")
            + Below(rates, around) + Again(rates, around.ToRadiansPerSecond);
    }

    // Bands as tried: their ends lie between two tried rates.
    private static string Below(GreatestRate rates, RateStretch around)
    {
        RateStretch[] bands = [.. rates.FailingBands.Where(band => band.ToRadiansPerSecond < around.FromRadiansPerSecond)];
        return bands.Length == 0 ? "" : $"; SLOWER IT FAILS {Say.List([.. bands.Select(Words)])}: the rotor's swings come and go with the rate";
    }

    private static string Again(GreatestRate rates, double above)
    {
        double[] again = [.. rates.Answers.Where(answer => answer.RateRadiansPerSecond > above && answer.End == MoveEnd.Arrives).Select(answer => answer.RateRadiansPerSecond)];
        return again.Length == 0 ? "" : $"; faster, {(again.Length == 1 ? Rate(again[0]) : $"some rates from {Rate(again[0])} to {Rate(again[^1])}")} arrive{(again.Length == 1 ? "s" : "")} again, which is no place to stay";
    }

    private static string Words(RateStretch band) =>
        band.FromRadiansPerSecond == band.ToRadiansPerSecond ? $"at {Rate(band.FromRadiansPerSecond)}" : $"from {Rate(band.FromRadiansPerSecond)} to {Rate(band.ToRadiansPerSecond)}";

    private static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);
}
