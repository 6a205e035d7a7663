using System.Globalization;

namespace AxisSim.Core.Bounds;

/// <summary>What one figure may be. Bounds are there to catch slips of unit or digit, not to judge a design; files and callers of this library are held to the same.</summary>
public readonly record struct Bound
{
    // A bound that was written in another unit may differ in its last digits.
    private const double Slack = 1e-12;

    private Bound(double least, double greatest, string unit, bool aboveLeast = false, int multipleOf = 0, bool orInfinite = false) =>
        (Least, Greatest, Unit, AboveLeast, MultipleOf, InfiniteAllowed) = (least, greatest, unit, aboveLeast, multipleOf, orInfinite);

    /// <summary>Least value, in <see cref="Unit"/>.</summary>
    public double Least { get; }

    /// <summary>Greatest value, in <see cref="Unit"/>.</summary>
    public double Greatest { get; }

    /// <summary>SI unit of both, as it is written in a message; empty for plain numbers.</summary>
    public string Unit { get; }

    /// <summary>Whether the least value itself is refused.</summary>
    public bool AboveLeast { get; }

    /// <summary>The figure is a whole multiple of this; 0 when it need not be whole.</summary>
    public int MultipleOf { get; }

    /// <summary>Whether infinity is allowed too: it stands for "none" or "never".</summary>
    public bool InfiniteAllowed { get; }

    /// <summary>What is allowed, in words.</summary>
    public string Allowed
    {
        get
        {
            string unit = string.IsNullOrEmpty(Unit) ? "" : " " + Unit;
            string range = double.IsPositiveInfinity(Greatest) ? $"{Text(Least)}{unit} or more"
                : AboveLeast ? $"above {Text(Least)}{unit} and up to {Text(Greatest)}{unit}"
                : $"from {Text(Least)}{unit} to {Text(Greatest)}{unit}";
            string whole = MultipleOf > 1 ? string.Create(CultureInfo.InvariantCulture, $", a multiple of {MultipleOf}") : "";
            return (MultipleOf > 0 ? "a whole number " : "") + range + whole + (InfiniteAllowed ? ", or infinite for none" : "");
        }
    }

    /// <summary>From the least to the greatest value, both included.</summary>
    public static Bound From(double least, double greatest, string unit = "") => new(least, greatest, unit);

    /// <summary>Above the least value, up to the greatest.</summary>
    public static Bound Above(double least, double greatest, string unit = "") => new(least, greatest, unit, aboveLeast: true);

    /// <summary>A whole number, both ends included.</summary>
    public static Bound Whole(double least, double greatest, int multipleOf = 1) => new(least, greatest, "", multipleOf: multipleOf);

    /// <summary>The same, or infinite for "none".</summary>
    public Bound OrInfinite() => new(Least, Greatest, Unit, AboveLeast, MultipleOf, orInfinite: true);

    /// <summary>Whether a figure is allowed; never when it is not a number.</summary>
    public bool Holds(double value)
    {
        if (double.IsInfinity(value))
        {
            return InfiniteAllowed && value > 0.0;
        }

        double slack = Slack * Math.Abs(value);
        return (AboveLeast ? value > Least : value >= Least - slack) && value <= Greatest + slack && (MultipleOf == 0 || value % MultipleOf == 0.0);
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
