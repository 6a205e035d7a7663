namespace AxisSim.Core.Outcomes;

/// <summary>Settle time and overshoot of a sampled error.</summary>
/// <remarks>
/// Settled means that the error stays within plus and minus a tolerance of a level until the end of the record. The time is interpolated at
/// the last crossing. The overshoot is the greatest excursion beyond the level in the direction of the approach.
/// </remarks>
public static class SettleLaw
{
    /// <summary>Time after the first sample from which all later ones lie within the band; null when the last one does not.</summary>
    /// <param name="errors">Samples, evenly spaced.</param>
    /// <param name="stepSeconds">Their spacing, s.</param>
    /// <param name="level">Centre of the band.</param>
    /// <param name="tolerance">Half its width.</param>
    public static double? Time(ReadOnlySpan<double> errors, double stepSeconds, double level, double tolerance)
    {
        int last = errors.Length - 1;
        if (last < 0 || Math.Abs(errors[last] - level) > tolerance)
        {
            return null;
        }

        int i = last;
        while (i >= 0 && Math.Abs(errors[i] - level) <= tolerance)
        {
            i--;
        }

        return i < 0 ? 0.0 : stepSeconds * Crossing(i, errors[i], errors[i + 1], level, tolerance);
    }

    /// <summary>Where the error enters the band for good, in steps: between the last sample outside, of index <paramref name="index"/>, and the next.</summary>
    internal static double Crossing(long index, double outside, double inside, double level, double tolerance)
    {
        double far = Math.Abs(outside - level), near = Math.Abs(inside - level);
        return index + ((far - tolerance) / (far - near));
    }

    /// <summary>Greatest excursion beyond the level towards <paramref name="direction"/> (+1 or -1); not below zero.</summary>
    public static double Overshoot(ReadOnlySpan<double> errors, double level, double direction)
    {
        double most = 0.0;
        foreach (double error in errors)
        {
            most = Math.Max(most, direction * (error - level));
        }

        return most;
    }
}
