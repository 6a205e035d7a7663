namespace AxisSim.Core.Outcomes;

/// <summary>Least, greatest and mean of a function over whole numbers, for a function that is smooth but for a few corners and jumps.</summary>
/// <remarks>
/// Where the function rises by as much in the first half of a stretch as in the second, to a thousandth, it has no crest and no corner within, so its extremes are at
/// the ends; elsewhere the halves are looked at each by itself, down to single numbers. So a jump, a corner and a crest are found to the number.
/// </remarks>
internal readonly record struct SmoothRange(double Least, double Mean, double Greatest)
{
    /// <summary>Share by which the rise of two halves may differ: at a corner that goes up and down, at least two steps of the stretch.</summary>
    private const double Alike = 1e-3;

    /// <summary>Differences below this share of the values are rounding.</summary>
    private const double Rounding = 1e-13;

    /// <summary>Ranges of two functions that are found together, over the numbers from first to last, in pieces of at most a number of them within which a swing cannot hide.</summary>
    public static (SmoothRange One, SmoothRange Other) Of(long first, long last, long piece, Func<long, (double One, double Other)> function)
    {
        long end = Math.Min(last, first + piece);
        (double One, double Other) from = function(first), to = function(end);
        (SmoothRange One, SmoothRange Other) all = Of(first, from, end, to, function);
        while (end < last)
        {
            long start = end;
            from = to;
            end = Math.Min(last, start + piece);
            to = function(end);
            (SmoothRange one, SmoothRange other) = Of(start, from, end, to, function);
            double share = (double)(start - first) / (end - first);
            all = (Both(all.One, one, share), Both(all.Other, other, share));
        }

        return all;
    }

    private static (SmoothRange One, SmoothRange Other) Of(long first, (double One, double Other) a, long last, (double One, double Other) b, Func<long, (double One, double Other)> function)
    {
        if (last - first <= 1)
        {
            return (Ends(a.One, b.One), Ends(a.Other, b.Other));
        }

        long middle = first + ((last - first) / 2);
        (double One, double Other) c = function(middle);
        if (Even(first, a.One, middle, c.One, last, b.One) && Even(first, a.Other, middle, c.Other, last, b.Other))
        {
            return (Ends(a.One, b.One), Ends(a.Other, b.Other));
        }

        (SmoothRange one, SmoothRange other) = Of(first, a, middle, c, function);
        (SmoothRange oneMore, SmoothRange otherMore) = Of(middle, c, last, b, function);
        double share = (double)(middle - first) / (last - first);
        return (Both(one, oneMore, share), Both(other, otherMore, share));
    }

    private static SmoothRange Ends(double a, double b) => new(Math.Min(a, b), 0.5 * (a + b), Math.Max(a, b));

    private static SmoothRange Both(SmoothRange a, SmoothRange b, double share) =>
        new(Math.Min(a.Least, b.Least), (share * a.Mean) + ((1.0 - share) * b.Mean), Math.Max(a.Greatest, b.Greatest));

    private static bool Even(long first, double a, long middle, double c, long last, double b)
    {
        double before = (c - a) / (middle - first), after = (b - c) / (last - middle);
        double slack = Rounding * Math.Max(Math.Abs(a), Math.Abs(b)) / (middle - first);
        return Math.Abs(before - after) <= (Alike * Math.Min(Math.Abs(before), Math.Abs(after))) + slack || double.IsNaN(before - after);
    }
}
