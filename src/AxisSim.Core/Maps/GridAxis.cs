namespace AxisSim.Core.Maps;

/// <summary>The values of one key along a map, ascending, evenly or logarithmically spaced (or nearly so, for whole numbers).</summary>
public sealed class GridAxis
{
    private readonly double[] values;

    /// <summary>An axis of at least two ascending values; all above zero when the spacing is logarithmic.</summary>
    public GridAxis(IReadOnlyList<double> values, bool logarithmic)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Count, 2);
        this.values = [.. values];
        Logarithmic = logarithmic;
    }

    /// <summary>Whether equal ratios, not equal differences, lie between neighbours.</summary>
    public bool Logarithmic { get; }

    /// <summary>How many values.</summary>
    public int Count => values.Length;

    /// <summary>The values.</summary>
    public IReadOnlyList<double> Values => values;

    /// <summary>Where a value lies: 0 at the first, 1 at the second and so on, between them in proportion; NaN outside.</summary>
    public double PositionOf(double value)
    {
        // The last digit of a value that was converted between units must not put it outside.
        double slack = 1e-9 * (values[^1] - values[0]);
        if (!(value >= values[0] - slack && value <= values[^1] + slack))
        {
            return double.NaN;
        }

        double inside = Math.Clamp(value, values[0], values[^1]);
        int i = Array.BinarySearch(values, inside);
        if (i >= 0)
        {
            return i;
        }

        int before = Math.Clamp(~i - 1, 0, values.Length - 2);
        return before + ((Scaled(inside) - Scaled(values[before])) / (Scaled(values[before + 1]) - Scaled(values[before])));
    }

    /// <summary>The value at a position.</summary>
    public double ValueAt(double position)
    {
        int before = Math.Clamp((int)Math.Floor(position), 0, values.Length - 2);
        double share = position - before;
        if (share is 0.0 or 1.0)
        {
            return values[before + (int)share];
        }

        double scaled = ((1.0 - share) * Scaled(values[before])) + (share * Scaled(values[before + 1]));
        return Logarithmic ? Math.Exp(scaled) : scaled;
    }

    private double Scaled(double value) => Logarithmic ? Math.Log(value) : value;
}
