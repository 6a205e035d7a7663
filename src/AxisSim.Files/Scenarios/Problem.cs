using System.Globalization;
using System.Text;

namespace AxisSim.Files.Scenarios;

/// <summary>How much a problem matters.</summary>
public enum ProblemSeverity
{
    /// <summary>The scenario is refused.</summary>
    Error,

    /// <summary>The scenario is accepted; the reader should know.</summary>
    Note,
}

/// <summary>One thing wrong with, or worth knowing about, an input: where, what was found, what is allowed and what to write instead.</summary>
/// <param name="File">File name as the caller gave it, or <c>--set</c> for a setting of the command line.</param>
/// <param name="Line">Line from 1, or the number of the setting; 0 when no line applies.</param>
/// <param name="Column">Column from 1; 0 when none applies.</param>
/// <param name="Key">Dotted key or section; empty when none applies.</param>
/// <param name="Found">What was found and why it will not do.</param>
/// <param name="Allowed">What is allowed; empty when the finding says it all.</param>
/// <param name="Fix">What to write instead; empty when that cannot be told.</param>
/// <param name="Severity">Error or note.</param>
public sealed record Problem(string File, int Line, int Column, string Key, string Found, string Allowed, string Fix, ProblemSeverity Severity = ProblemSeverity.Error)
{
    /// <summary>The problem in one line: <c>file:line: key: found ...; allowed: ...; write: ...</c>.</summary>
    /// <remarks>What is quoted from a file may hold line ends or other signs that would break up the message.</remarks>
    public override string ToString() => PlainText.Visible(Whole());

    private string Whole()
    {
        var text = new StringBuilder(File);
        if (Line > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $":{Line}");
        }

        text.Append(": ");
        if (Key.Length > 0)
        {
            text.Append(Key).Append(": ");
        }

        text.Append(Severity == ProblemSeverity.Note ? "note: " : "found ").Append(Found);
        if (Allowed.Length > 0)
        {
            text.Append("; allowed: ").Append(Allowed);
        }

        if (Fix.Length > 0)
        {
            text.Append("; write: ").Append(Fix);
        }

        return text.ToString();
    }
}
