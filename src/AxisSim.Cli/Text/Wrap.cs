namespace AxisSim.Cli.Text;

/// <summary>Breaks text into lines at spaces, so that a number stays with its unit.</summary>
internal static class Wrap
{
    /// <summary>Lines of at most so many columns; a word that is longer stands alone.</summary>
    public static IEnumerable<string> Lines(string text, int width, int indent, int hanging)
    {
        string line = new(' ', indent);
        bool empty = true;
        foreach (string word in Words(text))
        {
            if (!empty && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = new string(' ', hanging);
                empty = true;
            }

            line += empty ? word : " " + word;
            empty = false;
        }

        yield return line;
    }

    // A number and what follows it go to one line: "0.31 s", "mN m" and "N m" must not be torn apart.
    private static IEnumerable<string> Words(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string joined = "";
        foreach (string word in words)
        {
            bool glue = joined.Length > 0 && (char.IsAsciiDigit(joined[^1]) || joined is [.., ' ', 'N'] || joined.EndsWith(" mN", StringComparison.Ordinal));
            if (!glue && joined.Length > 0)
            {
                yield return joined;
                joined = "";
            }

            joined = glue ? joined + " " + word : word;
        }

        if (joined.Length > 0)
        {
            yield return joined;
        }
    }
}
