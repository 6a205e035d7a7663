using AxisSim.Core.Recommendations;

namespace AxisSim.Cli.Text.Recommend;

/// <summary>Changes of a mount and what they buy, in words.</summary>
internal static class ChangeText
{
    /// <summary>The change.</summary>
    public static string Of(MountChange change) => change switch
    {
        MountChange.MoreVoltage => "25 % more supply voltage",
        MountChange.MoreReduction => "25 % more reduction",
        MountChange.LessReduction => "25 % less reduction",
        MountChange.BetterBalance => "half the imbalance",
        MountChange.LessFriction => "25 % less bearing friction",
        MountChange.LessInertia => "25 % less inertia",
        MountChange.LongerRamp => "a ramp of 1.5 times the length",
        MountChange.MoreCurrent => "the rated current",
        MountChange.StrongerMotor => "a motor of 25 % more torque",
        _ => "half as many microsteps",
    };

    /// <summary>Rows of the table, the most useful first.</summary>
    public static IEnumerable<IReadOnlyList<string>> Rows(AxisRecommendation answer)
    {
        double now = answer.Binding?.Greatest.RateRadiansPerSecond ?? double.NaN;
        return answer.Sensitivities
            .OrderByDescending(one => double.IsNaN(one.GreatestRadiansPerSecond) ? double.NegativeInfinity : one.GreatestRadiansPerSecond)
            .Select(one => (IReadOnlyList<string>)
            [
                Of(one.Change).PadRight(32),
                double.IsNaN(one.GreatestRadiansPerSecond) ? "none" : Say.Number(Units.Degrees(one.GreatestRadiansPerSecond), 4),
                double.IsNaN(one.GreatestRadiansPerSecond) || !double.IsFinite(now) ? "" : Signed((one.GreatestRadiansPerSecond / now) - 1.0),
            ]);
    }

    /// <summary>The change that buys most; null when none buys anything worth a word.</summary>
    public static string? Best(AxisRecommendation answer)
    {
        const double WorthIt = 1.05;
        double now = answer.Binding?.Greatest.RateRadiansPerSecond ?? double.NaN;
        Sensitivity[] able = [.. answer.Sensitivities.Where(one => double.IsFinite(one.GreatestRadiansPerSecond))];
        if (able.Length == 0)
        {
            return null;
        }

        Sensitivity best = able.MaxBy(one => one.GreatestRadiansPerSecond);
        return double.IsFinite(now) && best.GreatestRadiansPerSecond < WorthIt * now ? null : Of(best.Change);
    }

    private static string Signed(double share) => (share >= 0.0 ? "+" : "-") + Say.Number(Math.Round(100.0 * Math.Abs(share))) + " %";
}
