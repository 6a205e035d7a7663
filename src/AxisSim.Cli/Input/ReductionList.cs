using AxisSim.Core.Numerics;

namespace AxisSim.Cli.Input;

/// <summary>The reductions to look at.</summary>
internal static class ReductionList
{
    /// <summary>From the scenario's own reduction divided by this: a motor on the worm itself, or on a stage that steps up.</summary>
    public const double Down = 8.0;

    /// <summary>To the scenario's own reduction times this.</summary>
    public const double Up = 4.0;

    /// <summary>Two reductions nearer than this share would print alike.</summary>
    private const double Near = 0.004;

    private const int Digits = 3;

    /// <summary>Evenly in the logarithm, to three digits, with the scenario's own among them.</summary>
    public static IReadOnlyList<double> Of(double own, double? from, double? to, int points)
    {
        (double first, double last) = Ends(own, from, to);
        IEnumerable<double> even = Enumerable.Range(0, points).Select(i => RoundDigits.Nearest(first * Math.Pow(last / first, i / (points - 1.0)), Digits));
        return WithOwn(even, own);
    }

    /// <summary>A list with the scenario's own reduction in it.</summary>
    public static IReadOnlyList<double> WithOwn(IEnumerable<double> ratios, double own) =>
        [.. ratios.Where(ratio => Math.Abs((ratio / own) - 1.0) > Near).Append(own).Distinct().Order()];

    /// <summary>The ends of the range.</summary>
    public static (double From, double To) Ends(double own, double? from, double? to) => (from ?? own / Down, to ?? own * Up);
}
