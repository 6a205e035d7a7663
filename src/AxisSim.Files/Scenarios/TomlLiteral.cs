using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Values as a scenario writes them.</summary>
internal static partial class TomlLiteral
{
    /// <summary>A value as it stands in a file: quoted where it has a unit or is a text, bare where it is a number.</summary>
    public static string Of(ScenarioKey key, EntryKind kind, string text) => kind switch
    {
        EntryKind.Text => Quoted(text),
        EntryKind.Setting when key.Kind is KeyKind.Number or KeyKind.WholeNumber => Number(text),
        EntryKind.Setting when key.Kind == KeyKind.Ratio => text.Contains('/', StringComparison.Ordinal) ? Quoted(text) : Number(text),
        EntryKind.Setting when key.Kind != KeyKind.Flag => Quoted(text),
        _ => text,
    };

    /// <summary>A text in quotes.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder(text.Length + 2).Append('"');
        foreach (char letter in text)
        {
            _ = letter switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\n' => quoted.Append("\\n"),
                '\r' => quoted.Append("\\r"),
                '\t' => quoted.Append("\\t"),
                _ when char.IsControl(letter) => quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:X4}"),
                _ => quoted.Append(letter),
            };
        }

        return quoted.Append('"').ToString();
    }

    // A command line takes ".5" and "5."; TOML wants a digit on both sides of the point.
    private static string Number(string text) =>
        Plain().IsMatch(text) ? text : double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture).ToString("R", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[+-]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
