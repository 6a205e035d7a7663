namespace AxisSim.Plots.Drawing;

/// <summary>A range of an axis, both ends finite and apart.</summary>
internal readonly record struct Span(double From, double To)
{
    /// <summary>Its length.</summary>
    public double Length => To - From;

    /// <summary>The smallest span that holds all finite values; a lone value gets room on both sides, none gives 0 to 1.</summary>
    public static Span Of(params ReadOnlySpan<IReadOnlyList<double>> lists)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (IReadOnlyList<double> values in lists)
        {
            for (int i = 0; i < values.Count; i++)
            {
                double value = values[i];
                if (double.IsFinite(value))
                {
                    low = Math.Min(low, value);
                    high = Math.Max(high, value);
                }
            }
        }

        return low > high ? new Span(0, 1) : new Span(low, high).Opened();
    }

    /// <summary>The same span widened by shares of its length.</summary>
    public Span Padded(double below, double above) => new(From - (below * Length), To + (above * Length));

    /// <summary>The same span, holding a value.</summary>
    public Span Holding(double value) => new Span(Math.Min(From, value), Math.Max(To, value)).Opened();

    private Span Opened()
    {
        // An axis that spans less than rounding noise would label noise.
        double least = Math.Max(1e-9 * Math.Max(Math.Abs(From), Math.Abs(To)), 1e-12);
        if (Length > least)
        {
            return this;
        }

        double room = From == 0 ? 1.0 : 0.5 * Math.Abs(From);
        return new Span(From - room, To + room);
    }
}
