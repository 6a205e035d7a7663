namespace AxisSim.Core.Studies;

/// <summary>Finds where a yes turns into a no (or back) along a scale, asking several points at once.</summary>
internal static class EdgeSearch
{
    /// <summary>First of ascending candidates for which the answer is <paramref name="wanted"/>; -1 when none has it.</summary>
    public static int First(IReadOnlyList<double> candidates, Func<double, bool> answer, bool wanted)
    {
        int lanes = Lanes;
        for (int from = 0; from < candidates.Count; from += lanes)
        {
            int count = Math.Min(lanes, candidates.Count - from);
            bool[] answers = new bool[count];
            Parallel.For(0, count, i => answers[i] = answer(candidates[from + i]));
            int hit = Array.IndexOf(answers, wanted);
            if (hit >= 0)
            {
                return from + hit;
            }
        }

        return -1;
    }

    /// <summary>Narrows an interval whose ends answer differently until their ratio is below <c>1 + tolerance</c>; the answer at <paramref name="low"/> stays there.</summary>
    public static (double Low, double High) Narrow(double low, double high, Func<double, bool> answer, bool answerAtLow, double tolerance)
    {
        int lanes = Lanes;
        while (Math.Max(high / low, low / high) > 1.0 + tolerance)
        {
            double[] points = [.. Enumerable.Range(1, lanes).Select(i => low * Math.Pow(high / low, i / (lanes + 1.0)))];
            bool[] answers = new bool[lanes];
            Parallel.For(0, lanes, i => answers[i] = answer(points[i]));
            int change = Array.FindIndex(answers, a => a != answerAtLow);
            (low, high) = change switch
            {
                -1 => (points[^1], high),
                0 => (low, points[0]),
                _ => (points[change - 1], points[change]),
            };
        }

        return (low, high);
    }

    // The same on every machine, so that results do not depend on its number of cores.
    private const int Lanes = 2;
}
