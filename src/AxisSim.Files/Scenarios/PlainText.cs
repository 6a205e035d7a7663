using System.Globalization;
using System.Text;

namespace AxisSim.Files.Scenarios;

/// <summary>Which signs a text of the user may hold that goes on to a terminal, a table, a page or a figure.</summary>
/// <remarks>
/// Refused are control characters (they steer a terminal and end lines of a file), line and paragraph separators, the marks that turn the direction of
/// writing (they show a text in another order than it has), halves of surrogate pairs, and code points that are no characters (XML and so SVG cannot hold them).
/// Joiners are allowed: some scripts need them.
/// </remarks>
public static class PlainText
{
    private const char Stand = '\ufffd';

    /// <summary>The first sign that will not do, as "the control character U+001B at place 4"; null when all will.</summary>
    /// <param name="text">The text.</param>
    /// <param name="lines">Whether line ends and tabs are allowed.</param>
    public static string? FirstStrange(string text, bool lines = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        for (int i = 0; i < text.Length;)
        {
            bool whole = Rune.TryGetRuneAt(text, i, out Rune rune);
            if (!whole || IsStrange(rune, lines))
            {
                int code = whole ? rune.Value : text[i];
                string kind = whole && Rune.IsControl(rune) ? "control character" : "character that cannot be shown";
                return string.Create(CultureInfo.InvariantCulture, $"the {kind} U+{code:X4} at place {i + 1}");
            }

            i += rune.Utf16SequenceLength;
        }

        return null;
    }

    /// <summary>The text without what will not do.</summary>
    public static string Without(string text, bool lines = false) => Replace(text, "", lines);

    /// <summary>The text with a stand-in for what will not do, for messages.</summary>
    public static string Visible(string text) => FirstStrange(text) is null ? text : Replace(text, Stand.ToString(), lines: false);

    private static string Replace(string text, string by, bool lines)
    {
        var kept = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length;)
        {
            bool whole = Rune.TryGetRuneAt(text, i, out Rune rune);
            int length = whole ? rune.Utf16SequenceLength : 1;
            kept.Append(whole && !IsStrange(rune, lines) ? text.AsSpan(i, length) : by);
            i += length;
        }

        return kept.ToString();
    }

    private static bool IsStrange(Rune rune, bool lines) => rune.Value switch
    {
        '\n' or '\r' or '\t' => !lines,
        0x2028 or 0x2029 => true,
        0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => true,
        >= 0xFDD0 and <= 0xFDEF => true,
        var code => Rune.IsControl(rune) || (code & 0xFFFE) == 0xFFFE,
    };
}
