using AxisSim.Files.Keys;

namespace AxisSim.Files.Maps;

/// <summary>The numbers of a range.</summary>
internal static class RangeValues
{
    /// <summary>So many numbers from one to the other, with the ends as they were written; of whole numbers those within, rounded, each once.</summary>
    public static double[] Between(ScenarioKey key, double from, double to, int count, bool logarithmic)
    {
        if (key.Kind == KeyKind.WholeNumber)
        {
            from = Math.Ceiling(from / key.MultipleOf) * key.MultipleOf;
            to = Math.Floor(to / key.MultipleOf) * key.MultipleOf;
        }

        double[] numbers = new double[count];
        for (int i = 0; i < count; i++)
        {
            double share = (double)i / (count - 1);
            double number = i == 0 ? from
                : i == count - 1 ? to
                : logarithmic ? from * Math.Pow(to / from, share)
                : from + ((to - from) * share);
            numbers[i] = key.Kind == KeyKind.WholeNumber ? Whole(key, number) : i == 0 || i == count - 1 ? number : MapRange.Rounded(number);
        }

        return key.Kind == KeyKind.WholeNumber ? [.. numbers.Distinct()] : numbers;
    }

    /// <summary>The nearest number that a key for whole numbers can take.</summary>
    public static double Whole(ScenarioKey key, double number) => Math.Round(number / key.MultipleOf) * key.MultipleOf;
}
