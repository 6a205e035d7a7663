using System.Text.RegularExpressions;

namespace AxisSim.Tests.Docs;

/// <summary>A command of a page and what the page says that it prints.</summary>
/// <param name="Line">The command as written.</param>
/// <param name="Quoted">Lines of the block that follows, "..." where something is left out; empty when the page shows no output.</param>
/// <param name="FirstLine">Index of the first quoted line in the page.</param>
internal sealed record DocQuote(string Line, IReadOnlyList<string> Quoted, int FirstLine);

/// <summary>A page of the guide: the commands in its sh blocks, the outputs in its text blocks, and its figures in bold.</summary>
internal sealed partial class DocPage(string path)
{
    public string Path { get; } = path;

    public List<string> Lines { get; } = [.. File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n')];

    /// <summary>The commands of this program, in order, each with the output that the page shows.</summary>
    public IReadOnlyList<DocQuote> Quotes()
    {
        var quotes = new List<DocQuote>();
        for (int i = 0; i < Lines.Count; i++)
        {
            if (!Lines[i].StartsWith("```", StringComparison.Ordinal))
            {
                continue;
            }

            int end = Lines.IndexOf("```", i + 1);
            List<string> block = Lines[(i + 1)..end];
            if (Lines[i] == "```sh")
            {
                quotes.AddRange(Commands(block).Select(line => new DocQuote(line, [], 0)));
            }
            else if (Lines[i] == "```text" && quotes.Count > 0)
            {
                quotes.Add(new DocQuote(quotes[^1].Line, block, i + 1));
            }

            i = end;
        }

        return quotes;
    }

    /// <summary>Figures in bold: whatever is between two double asterisks and holds a digit.</summary>
    public IReadOnlyList<string> BoldFigures() =>
        [.. Bold().Matches(string.Join('\n', Lines)).Select(match => match.Groups[1].Value).Where(text => text.Any(char.IsAsciiDigit))];

    private static IEnumerable<string> Commands(List<string> block) => string.Join('\n', block)
        .Replace("\\\n", " ", StringComparison.Ordinal)
        .Split('\n')
        .Where(DocCommand.IsOurs);

    [GeneratedRegex(@"\*\*([^*]+)\*\*")]
    private static partial Regex Bold();
}
