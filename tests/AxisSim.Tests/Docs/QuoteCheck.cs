namespace AxisSim.Tests.Docs;

/// <summary>Compares the output that a page shows with what the program prints, segment by segment between lines of "...".</summary>
internal static class QuoteCheck
{
    private const string LeftOut = "...";

    /// <summary>What the page should show: the same number of lines from where the program prints each segment's first words.</summary>
    /// <returns>Null when a segment's first words are not printed any more.</returns>
    public static IReadOnlyList<string>? Current(IReadOnlyList<string> quoted, string output)
    {
        string[] printed = output.TrimEnd('\n').Split('\n');
        var current = new List<string>();
        int from = 0;
        for (int i = 0; i < quoted.Count; i++)
        {
            if (quoted[i] == LeftOut)
            {
                current.Add(LeftOut);
                continue;
            }

            if (i == 0 || quoted[i - 1] == LeftOut)
            {
                string first = FirstWords(quoted[i]);
                from = Array.FindIndex(printed, from, line => line.StartsWith(first, StringComparison.Ordinal));
                if (from < 0)
                {
                    return null;
                }
            }

            if (from >= printed.Length)
            {
                return null;
            }

            current.Add(printed[from++]);
        }

        return current;
    }

    // Up to the first figure, which may have changed.
    private static string FirstWords(string line)
    {
        int digit = line.AsSpan().IndexOfAnyInRange('0', '9');
        return digit > 0 ? line[..digit] : line;
    }
}
