using System.Globalization;

namespace AxisSim.Report.Text;

/// <summary>Numbers as people read them: three or four digits that matter, a decimal point in every culture, never an exponent.</summary>
internal static class Say
{
    private const int MostDecimals = 12;

    /// <summary>A number to so many significant digits; zeros at its end are left out, whole digits never are.</summary>
    public static string Number(double value, int digits = 3)
    {
        if (!double.IsFinite(value))
        {
            return double.IsNaN(value) ? "unknown" : value > 0.0 ? "unlimited" : "-unlimited";
        }

        if (value == 0.0)
        {
            return "0";
        }

        int before = (int)Math.Floor(Math.Log10(Math.Abs(value))) + 1;
        int decimals = Math.Clamp(digits - before, 0, MostDecimals);
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        text = decimals > 0 ? text.TrimEnd('0').TrimEnd('.') : text;
        return text is "-0" ? "0" : text;
    }

    /// <summary>A whole number.</summary>
    public static string Count(long value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number with its unit.</summary>
    public static string With(double value, string unit, int digits = 3) => $"{Number(value, digits)} {unit}";

    /// <summary>"1 word" or "n words".</summary>
    public static string Many(long count, string word) => count == 1 ? $"1 {word}" : $"{Count(count)} {word}s";

    /// <summary>Words strung together: "a, b and c".</summary>
    public static string List(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1],
    };

    /// <summary>The same sentence with a capital at its start.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
