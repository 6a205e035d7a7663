namespace AxisSim.Files.Keys;

/// <summary>Finds the nearest of some names by the edit distance of Damerau and Levenshtein (restricted: adjacent letters swapped count once).</summary>
internal static class NearestName
{
    // A third of the letters wrong is as far as a slip goes; beyond that a suggestion would be a guess.
    private const int LettersPerSlip = 3;
    private const int LongestCompared = 120;

    /// <summary>The nearest name, or null when none is near.</summary>
    public static string? Of(string name, IEnumerable<string> names)
    {
        string? best = null;
        int least = int.MaxValue;
        foreach (string candidate in names)
        {
            // A name cut short at a word ("ramp" for "ramp_time") counts as one slip, however much is missing.
            int distance = name.Length > 1 && candidate.StartsWith(name + "_", StringComparison.OrdinalIgnoreCase) ? 1 : Distance(name, candidate);
            if (distance < least)
            {
                (best, least) = (candidate, distance);
            }
        }

        return best is not null && least <= Math.Max(1, Math.Max(name.Length, best.Length) / LettersPerSlip) ? best : null;
    }

    /// <summary>Insertions, deletions, substitutions and swaps of neighbours between two names; case does not count.</summary>
    public static int Distance(string first, string second)
    {
        if (first.Length > LongestCompared || second.Length > LongestCompared)
        {
            return int.MaxValue;
        }

        // Three rows of the table of distances: two back for a swap, one back for all else.
        int[] before = [], last = [.. Enumerable.Range(0, second.Length + 1)];
        for (int i = 1; i <= first.Length; i++)
        {
            int[] row = new int[second.Length + 1];
            row[0] = i;
            for (int j = 1; j <= second.Length; j++)
            {
                int change = Same(first[i - 1], second[j - 1]) ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
                bool swapped = i > 1 && j > 1 && Same(first[i - 1], second[j - 2]) && Same(first[i - 2], second[j - 1]);
                row[j] = swapped ? Math.Min(row[j], before[j - 2] + 1) : row[j];
            }

            (before, last) = (last, row);
        }

        return last[second.Length];
    }

    private static bool Same(char a, char b) => char.ToUpperInvariant(a) == char.ToUpperInvariant(b);
}
