using System.Text.RegularExpressions;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace AxisSim.Files.Scenarios;

/// <summary>Parses the text of a scenario and reports what is not TOML, line by line.</summary>
internal static partial class TomlText
{
    private const string Allowed = "TOML: one key = value in a line, values with a unit in quotes";

    /// <summary>The document of a text; problems of the syntax are in it.</summary>
    public static ScenarioDocument Parse(string text, string file)
    {
        var document = new ScenarioDocument(file);
        string[] lines = text.Split('\n');
        DocumentSyntax tree;
        try
        {
            tree = SyntaxParser.Parse(text, file, validate: true);
        }
        catch (TomlException error)
        {
            // The parser gives up at once on nesting without end.
            document.SectionsBroken = true;
            Report(document, lines, error.Line is > 0 ? (int)error.Line : 1, error.Column is > 0 ? (int)error.Column : 0, FirstSentence(error.Message));
            return document;
        }

        new TomlWalk(document).Walk(tree);
        HashSet<int> reported = [.. document.Problems.Sorted().Select(problem => problem.Line)];
        foreach (DiagnosticMessage message in tree.Diagnostics)
        {
            int line = Math.Max(0, message.Span.Start.Line) + 1;
            bool redefined = message.Message.Contains("already defined", StringComparison.Ordinal);
            // A header without its bracket swallows the line end; the line after it is not to blame.
            bool swallowed = document.SectionsBroken && document.BrokenLines.Contains(line - 1);
            if (message.Kind == DiagnosticMessageKind.Error && !swallowed && !(redefined && reported.Contains(line)) && document.BrokenLines.Add(line))
            {
                Report(document, lines, line, message.Span.Start.Column + 1, message.Message);
            }
        }

        foreach (string path in document.Entries.Values.Where(entry => IsBroken(document, entry)).Select(entry => entry.Path).ToList())
        {
            document.Entries.Remove(path);
        }

        return document;
    }

    private static bool IsBroken(ScenarioDocument document, Entry entry) =>
        document.BrokenLines.Count > 0 && (document.BrokenLines.Contains(entry.Line) || entry.Text.Contains('\n', StringComparison.Ordinal));

    private static void Report(ScenarioDocument document, string[] lines, int line, int column, string message)
    {
        document.BrokenLines.Add(line);
        string source = line <= lines.Length ? lines[line - 1].TrimEnd('\r') : "";
        document.SectionsBroken |= source.TrimStart().StartsWith('[');
        Match unquoted = UnquotedValue().Match(source);
        string fix = unquoted.Success ? $"{unquoted.Groups[1].Value} = \"{unquoted.Groups[2].Value.Trim()}\"" : "";
        string shown = new Entry("", EntryKind.Setting, source.Trim(), "", 0, 0).Shown;
        document.Problems.Error(new Spot(line, column), "", $"{shown}, which is not TOML ({Clean(message)})", Allowed, fix);
    }

    // Control pictures and backticks of the parser's messages mean little to a reader.
    private static string Clean(string message) =>
        string.Concat(message.Replace("␤", "the end of the line", StringComparison.Ordinal).Replace("`", "", StringComparison.Ordinal).Select(c => char.IsControl(c) ? ' ' : c));

    private static string FirstSentence(string message) => message.Split(". ")[0];

    [GeneratedRegex("""^\s*([A-Za-z0-9_.-]+)\s*=\s*([^"'#\[\]{}=]+?)\s*(#.*)?$""", RegexOptions.CultureInvariant)]
    private static partial Regex UnquotedValue();
}
