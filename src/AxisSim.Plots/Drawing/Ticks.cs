namespace AxisSim.Plots.Drawing;

/// <summary>Round values to label on an axis.</summary>
internal static class Ticks
{
    private static readonly double[][] s_perDecade = [[1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 2, 3, 5, 7], [1, 2, 5], [1, 3], [1]];

    /// <summary>Multiples of 1, 2 or 5 times a power of ten; at most so many.</summary>
    public static IReadOnlyList<double> Linear(double from, double to, int most)
    {
        double coarse = (to - from) / Math.Max(1, most);
        double power = Math.Pow(10.0, Math.Floor(Math.Log10(coarse)));
        double step = power * new[] { 1.0, 2.0, 5.0, 10.0 }.First(k => k * power >= coarse * (1.0 - 1e-9));
        double first = Math.Ceiling((from / step) - 1e-9), last = Math.Floor((to / step) + 1e-9);
        return [.. Enumerable.Range(0, Math.Max(0, (int)(last - first) + 1)).Select(i => (first + i) * step)];
    }

    /// <summary>Values for a logarithmic axis: of a decade as many as fit, whole decades where even one each is too many, evenly spaced ones on a short axis.</summary>
    public static IReadOnlyList<double> Logarithmic(double from, double to, int most)
    {
        int low = (int)Math.Floor(Math.Log10(from)), high = (int)Math.Ceiling(Math.Log10(to));
        foreach (double[] digits in s_perDecade)
        {
            double[] ticks =
            [
                .. Enumerable.Range(low, high - low + 1).SelectMany(decade => digits.Select(digit => digit * Math.Pow(10.0, decade))).Where(v => v >= from * (1.0 - 1e-9) && v <= to * (1.0 + 1e-9)),
            ];
            if (ticks.Length < 3)
            {
                break;
            }

            if (ticks.Length <= most)
            {
                return ticks;
            }
        }

        if (to / from < 30.0)
        {
            return Linear(from, to, most);
        }

        int step = Math.Max(1, (int)Math.Ceiling((high - low) / (double)most));
        return [.. Enumerable.Range(0, ((high - low) / step) + 1).Select(i => Math.Pow(10.0, low + (i * step))).Where(v => v >= from * (1.0 - 1e-9) && v <= to * (1.0 + 1e-9))];
    }
}
