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

        string bands = Bands(rates);
        if (rates.Around(present) is not { } around)
        {
            return (double.IsNaN(rates.RateRadiansPerSecond) ? "none: even the least rate that was tried fails" : $"none: the greatest rate up to which all arrive is {Rate(rates.RateRadiansPerSecond)}") + bands;
        }

        double? failing = rates.Answers.Where(answer => answer.RateRadiansPerSecond > around.ToRadiansPerSecond).Select(answer => (double?)answer.RateRadiansPerSecond).FirstOrDefault();
        return (failing is { } first ? $"it arrives up to {Rate(around.ToRadiansPerSecond)}, and fails at {Rate(first)}" : $"it arrives at every rate tried up to {Rate(around.ToRadiansPerSecond)}, {ends}") + bands;
    }

    // Bands as tried: their ends lie between two tried rates.
    private static string Bands(GreatestRate rates) => rates.FailingBands.Count == 0 ? ""
        : $"; slower or faster it fails {Say.List([.. rates.FailingBands.Select(band => band.FromRadiansPerSecond == band.ToRadiansPerSecond ? $"at {Rate(band.FromRadiansPerSecond)}" : $"from {Rate(band.FromRadiansPerSecond)} to {Rate(band.ToRadiansPerSecond)}")])} though faster rates arrive: the rotor's swings come and go with the rate";

    private static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);
}
