using AxisSim.Core.Envelopes;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>What stands against a greater rate, in words.</summary>
internal static class BindingText
{
    // Within this share of the greatest rate the recommended one is "at" it.
    private const double AtTheEnd = 0.97;

    /// <summary>One or two sentences.</summary>
    public static string Of(AxisRecommendation answer, RecommendAim aim)
    {
        Binding binding = answer.Binding!;
        double rate = answer.Chosen!.Settings.SlewRateRadiansPerSecond, greatest = binding.Greatest.RateRadiansPerSecond;
        string why = Why(binding);
        if (binding.Limit == Limit.Temperature)
        {
            return "Faster settings hold with the margin, but slewing, tracking or holding without end the winding would pass the limit of its insulation.";
        }

        if (!double.IsFinite(greatest))
        {
            return $"With this ramp, current and changeover the search finds no greater rate that holds up from below: {why}.";
        }

        return rate >= AtTheEnd * greatest
            ? $"With this ramp and current no more than {RecommendVerdict.Rate(greatest)} holds with the margin: {why}."
            : $"With this ramp and current up to {RecommendVerdict.Rate(greatest)} would hold with the margin, where {why}. {Choice(aim)}";
    }

    private static string Choice(RecommendAim aim) => aim switch
    {
        RecommendAim.Quietest => "Less was taken for quiet.",
        RecommendAim.Coolest => "Less was taken, for another setting is as cool and no slower.",
        RecommendAim.Fastest => "Less was taken, because slew and settling together are shorter so.",
        _ => "Less was taken, for the margin and the heat (see the trade-off).",
    };

    private static string Why(Binding binding) => binding.Limit switch
    {
        Limit.SupplyVoltage => $"the supply voltage limits the torque above {Units.Rate(binding.VoltageLimitsFromRadiansPerSecond)} (with ten times the voltage the next rate arrives)",
        Limit.Swings when binding.Greatest.Island is { } island => $"{LimitWords.Why(Limit.Swings)} (from {RecommendVerdict.Rate(island.FromRadiansPerSecond)} on some rates arrive again)",
        Limit.PulseRate => $"the greatest pulse rate of the controller ends the search at {RecommendVerdict.Rate(binding.Greatest.TopRadiansPerSecond)}",
        _ => LimitWords.Why(binding.Limit),
    };
}
